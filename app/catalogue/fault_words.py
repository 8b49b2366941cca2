"""The sentences for values that a part or a row can't have: what stands there and what is allowed."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from difflib import get_close_matches
from typing import Any

from pydantic import BaseModel, ValidationError
from pydantic_core import ErrorDetails

from app.catalogue.fault import Fault, shown

Words = Callable[[ErrorDetails, Mapping[str, Any]], str]

WORDS: Mapping[str, Words] = {
    "missing": lambda _error, _more: "is missing; it must be given",
    "value_error": lambda _error, more: str(more["error"]),
    "literal_error": lambda error, more: f"{shown(error['input'])} is not known; allowed: {more['expected']}",
    "enum": lambda error, more: f"{shown(error['input'])} is not known; allowed: {more['expected']}",
    "int_parsing": lambda error, _more: f"must be a whole number, like 36, not {shown(error['input'])}",
    "int_from_float": lambda error, _more: f"must be a whole number, like 36, not {shown(error['input'])}",
    "int_type": lambda error, _more: f"must be a whole number, like 36, not {shown(error['input'])}",
    "bool_parsing": lambda error, _more: f"must be true or false, not {shown(error['input'])}",
    "bool_type": lambda error, _more: f"must be true or false, not {shown(error['input'])}",
    "greater_than_equal": lambda error, more: f"must be {more['ge']} or more, not {error['input']}",
    "less_than_equal": lambda error, more: f"must be {more['le']} or less, not {error['input']}",
    "tuple_type": lambda error, _more: f"must be a list, like [a, b], not {shown(error['input'])}",
    "string_type": lambda error, _more: f"must be text, not {shown(error['input'])}",
    "string_too_short": lambda _error, _more: "must not be empty",
    "string_too_long": lambda error, more: (
        f"has {len(str(error['input']))} characters; {more['max_length']} are allowed"
    ),
    "too_short": lambda _error, more: f"needs at least {more['min_length']} in the list",
    "model_type": lambda error, _more: f"must be a group of names and values, not {shown(error['input'])}",
    "model_attributes_type": lambda error, _more: (
        f"must be a group of names and values, not {shown(error['input'])}"
    ),
    "date_from_datetime_parsing": lambda error, _more: (
        f"must be a date, like 2026-01-31, not {shown(error['input'])}"
    ),
}
SLUG_WORDS = "must be small letters, digits and single hyphens, like axle-142, not"
LINE_WORDS = "must be one line of printable characters, not"


def _unknown_field(name: str, model: type[BaseModel]) -> str:
    near = get_close_matches(name, model.model_fields, n=1)
    allowed = f"did you mean {near[0]}?" if near else f"known: {', '.join(model.model_fields)}"
    return f"is not a value that is known here; {allowed}"


def _sentence(error: ErrorDetails, model: type[BaseModel]) -> str:
    kind, more = error["type"], error.get("ctx", {})
    if kind == "extra_forbidden":
        return _unknown_field(str(error["loc"][-1]), model)
    if kind == "string_pattern_mismatch":
        words = SLUG_WORDS if "a-z0-9" in more["pattern"] else LINE_WORDS
        return f"{words} {shown(error['input'])}"
    words_for = WORDS.get(kind)
    return words_for(error, more) if words_for else f"{error['msg']}: {shown(error['input'])}"


def _field(location: tuple[int | str, ...]) -> str:
    path = ""
    for step in location:
        path += f"[{step + 1}]" if isinstance(step, int) else f".{step}" if path else step
    return path


def faults_of(error: ValidationError, file: str, part: str, model: type[BaseModel]) -> Iterator[Fault]:
    """Every fault of one part or row; the first of a list is [1]."""
    for detail in error.errors(include_url=False):
        yield Fault(file, part, _field(detail["loc"]), _sentence(detail, model))
