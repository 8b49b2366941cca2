"""YAML text in and out: every scalar stays text, nothing is executed, and one content has one spelling.

The reader is told apart from a general one by what it refuses: anchors, aliases and tags (a few lines of them
can unfold to gigabytes), keys given twice, and nesting deeper than any part is.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Hashable, Iterator, Mapping, Sequence
from typing import Any

import yaml

from app.catalogue.fault import Fault, shown

LARGEST_TEXT_BYTES = 2_000_000
DEEPEST = 12
NO_FOLDING = 1_000_000
LIST_TAG, GROUP_TAG = "tag:yaml.org,2002:seq", "tag:yaml.org,2002:map"
DIMENSION_KEYS = ({"value", "plus_minus"}, {"low", "high"})

# The reader in C where there is one; both read every scalar as text.
_Fast: type[yaml.BaseLoader] = getattr(yaml, "CBaseLoader", yaml.BaseLoader)


class _Reader(_Fast):  # type: ignore[misc, valid-type]
    """Reads scalars as text and notes each key that stands twice in one mapping."""

    def __init__(self, text: str) -> None:
        super().__init__(text)
        self.twice: list[str] = []

    def construct_mapping(self, node: yaml.MappingNode, deep: bool = False) -> dict[Hashable, Any]:  # noqa: FBT001, FBT002 - pyyaml's signature
        for name, times in Counter(key.value for key, _ in node.value if isinstance(key.value, str)).items():
            if times > 1:
                self.twice.append(
                    f"line {node.start_mark.line + 1} and below: {shown(name)} stands {times} times"
                )
        read: dict[Hashable, Any] = super().construct_mapping(node, deep=deep)
        return read


def _refusals(text: str) -> Iterator[str]:
    depth = 0
    for event in yaml.parse(text, Loader=_Fast):
        line = event.start_mark.line + 1 if event.start_mark else 1
        if isinstance(event, yaml.AliasEvent) or getattr(event, "anchor", None):
            yield f"line {line}: anchors (&) and aliases (*) are not used here; write the value out"
        if getattr(event, "tag", None):
            yield f"line {line}: tags (!) are not used here; write the plain value"
        depth += isinstance(event, yaml.CollectionStartEvent) - isinstance(event, yaml.CollectionEndEvent)
        if depth > DEEPEST:
            yield f"line {line}: nested deeper than {DEEPEST} levels"
            return


def _where(error: yaml.YAMLError) -> str:
    if isinstance(error, yaml.MarkedYAMLError) and error.problem_mark is not None:
        return f"line {error.problem_mark.line + 1}: this is not YAML: {error.problem}"
    return f"this is not YAML: {' '.join(str(error).split())}"


def read_yaml(file: str, text: str) -> tuple[object, tuple[Fault, ...]]:
    """The content of a text as dicts, lists and strings, and the faults that kept it from being read."""
    try:
        size = len(text.encode())
    except UnicodeEncodeError:
        return None, (Fault(file, "", "", "the text holds half a character (a lone surrogate)"),)
    if size > LARGEST_TEXT_BYTES:
        message = f"the text has {size:,} bytes; {LARGEST_TEXT_BYTES:,} are allowed"
        return None, (Fault(file, "", "", message),)
    try:
        content, messages = _content(text)
    except yaml.YAMLError as error:
        return None, (Fault(file, "", "", _where(error)),)
    return content, tuple(Fault(file, "", "", message) for message in messages)


def _content(text: str) -> tuple[object, tuple[str, ...]]:
    refused = tuple(_refusals(text))
    if refused:
        return None, refused
    reader = _Reader(text)
    try:
        content: object = reader.get_single_data()
    finally:
        reader.dispose()
    return content, tuple(reader.twice)


class _Writer(yaml.SafeDumper):
    """Writes text without asking what it could also mean; the pure Python one, the same on every machine."""

    yaml_implicit_resolvers: dict[str, list[tuple[str, Any]]] = {}  # noqa: RUF012 - pyyaml's attribute

    def ignore_aliases(self, data: object) -> bool:  # noqa: ARG002 - pyyaml's signature
        return True


class _LineOfWords(list[object]):
    """A list that is written on one line."""


class _LineOfValues(dict[str, object]):
    """A group of values that is written on one line."""


_Writer.add_representer(
    _LineOfWords, lambda writer, words: writer.represent_sequence(LIST_TAG, words, flow_style=True)
)
_Writer.add_representer(
    _LineOfValues, lambda writer, values: writer.represent_mapping(GROUP_TAG, values, flow_style=True)
)


def as_text(value: object) -> object:
    """Numbers and truth values as the words that the reader hands back."""
    if isinstance(value, bool):
        return "true" if value else "false"
    if isinstance(value, Mapping):
        group = {str(key): as_text(item) for key, item in value.items()}
        return _LineOfValues(group) if set(group) in DIMENSION_KEYS else group
    if isinstance(value, Sequence) and not isinstance(value, str):
        items = [as_text(item) for item in value]
        return _LineOfWords(items) if all(isinstance(item, str) for item in items) else items
    return str(value)


def write_yaml(content: object) -> str:
    """The one spelling of a content; reading it gives the same content, every scalar as text."""
    return yaml.dump(
        as_text(content),
        Dumper=_Writer,
        allow_unicode=True,
        default_flow_style=False,
        sort_keys=False,
        width=NO_FOLDING,
    )
