"""Turns a value from JSON into the text that somebody would have typed, so that there is one grammar only."""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass
from typing import TypeGuard

from app.facts.fact import ChoiceFact, Fact
from app.facts.messages import JSON_NUMBER, JSON_WORD, NotReadError, listed
from app.facts.plain_text import SHORT, cut

MOST_BITS = 4096
NOT_FINITE = {"nan": "NaN", "inf": "Infinity", "-inf": "-Infinity"}
MOST_SHOWN = 8


@dataclass(frozen=True, slots=True)
class JsonText:
    """The text and the tool that a JSON value stands for."""

    typed: str
    tool: str = ""


def json_text(fact: Fact, value: object) -> JsonText:
    """The value as text. Raises NotReadError, which says what is allowed, for a wrong type."""
    if value is None:
        return JsonText("?")
    if isinstance(value, str):
        return JsonText(value)
    if isinstance(fact, ChoiceFact):
        return _words(fact, value)
    if is_number(value):
        return JsonText(number_text(value))
    if isinstance(value, Mapping):
        return _object(fact, value)
    raise NotReadError(_wrong(fact, value))


def is_number(value: object) -> TypeGuard[int | float]:
    """Whether a JSON value is a number; true and false are not."""
    return isinstance(value, int | float) and not isinstance(value, bool)


def number_text(value: float) -> str:
    """A number as typed; Python refuses to write out the very longest, which are far off anyway."""
    if isinstance(value, int) and value.bit_length() > MOST_BITS:
        return f"{'-' if value < 0 else ''}1e{int(value.bit_length() * math.log10(2))}"
    return NOT_FINITE.get(repr(value), repr(value).removesuffix(".0"))


def shown_value(value: object) -> str:
    """A JSON value as it is shown again; what is nested deeper is only hinted at."""
    match value:
        case dict():
            parts = list(value.items())[:MOST_SHOWN]
            return "{" + listed(f"{cut(str(name), SHORT)}: {_flat(each)}" for name, each in parts) + "}"
        case list():
            return "[" + listed(_flat(each) for each in value[:MOST_SHOWN]) + "]"
        case _:
            return _flat(value)


def _flat(value: object) -> str:
    match value:
        case None:
            return "null"
        case bool():
            return str(value).lower()
        case str():
            return value
        case int() | float():
            return number_text(value)
        case dict():
            return "{…}"
        case _:
            return "[…]"


def _words(fact: ChoiceFact, value: object) -> JsonText:
    if isinstance(value, list) and value and all(isinstance(word, str) for word in value):
        return JsonText(listed(value))
    if fact.by_gauge and isinstance(value, Mapping) and value.keys() == {"word", "gauge"}:
        word, gauge = value["word"], value["gauge"]
        if isinstance(gauge, str):
            return JsonText(word if isinstance(word, str) else _words(fact, word).typed, gauge)
    raise NotReadError(_wrong(fact, value))


def _object(fact: Fact, value: Mapping[object, object]) -> JsonText:
    tool = value.get("tool", "")
    numbers = {name: each for name, each in value.items() if name != "tool"}
    if not isinstance(tool, str) or not all(is_number(each) for each in numbers.values()):
        raise NotReadError(_wrong(fact, value))
    texts = {str(name): number_text(each) for name, each in numbers.items() if is_number(each)}
    if texts.keys() == {"value"}:
        return JsonText(texts["value"], tool)
    if texts.keys() == {"value", "plus_minus"}:
        return JsonText("{value} ± {plus_minus}".format_map(texts), tool)
    if texts.keys() == {"low", "high"} and not tool:
        return JsonText("{low}..{high}".format_map(texts))
    raise NotReadError(_wrong(fact, value))


def _wrong(fact: Fact, value: object) -> str:
    typed = cut(shown_value(value), SHORT)
    if isinstance(fact, ChoiceFact):
        allowed = listed(word.word for word in fact.words)
        return JSON_WORD.format(label=fact.label, allowed=allowed, typed=typed)
    return JSON_NUMBER.format(label=fact.label, typed=typed)
