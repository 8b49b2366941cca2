"""Reads a posted form: a field for each fact, and a field <fact>__tool for how it was measured."""

from __future__ import annotations

from collections.abc import Collection, Iterator, Mapping
from dataclasses import replace

from app.facts.contradictions import contradictions
from app.facts.fact import Fact
from app.facts.reading import Read, Reading, read_answer, reading_of
from app.facts.table import FACTS

TOOL_SUFFIX = "__tool"
NOT_A_TEXT = "(file)"


def read_form(fields: Mapping[str, object], required: Collection[str] = ()) -> Reading:
    """The facts among the fields of a form; an empty field is a fact not asked, unless it is required.

    Fields that are no facts are left alone. Never raises. Two facts that can't both be are errors as well.
    """
    texts = {name: _text(value) for name, value in fields.items() if _fact_name(name) in FACTS}
    reading = reading_of(_results(texts, required), texts)
    return replace(reading, errors=(*reading.errors, *contradictions(reading.answers)))


def _results(texts: Mapping[str, str], required: Collection[str]) -> Iterator[Read]:
    for fact in FACTS.values():
        typed = texts.get(fact.name, "")
        if typed.strip() or fact.name in required:
            yield read_answer(fact, typed, _tool(fact, texts))


def _tool(fact: Fact, texts: Mapping[str, str]) -> str:
    return texts.get(fact.name + TOOL_SUFFIX, "").strip()


def _fact_name(field: str) -> str:
    return field.removesuffix(TOOL_SUFFIX)


def _text(value: object) -> str:
    """A form can carry a file where a text belongs; it is refused like any other unreadable text."""
    return value if isinstance(value, str) else NOT_A_TEXT
