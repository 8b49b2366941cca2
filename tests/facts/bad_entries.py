"""Bad entries of every kind for every fact, as text and as JSON, and how the sentence about each begins."""

from __future__ import annotations

import csv
import math
from collections.abc import Callable
from dataclasses import dataclass
from io import StringIO

from app.facts.fact import ChoiceFact, Fact, NumberFact
from app.facts.json_reader import section_of
from app.facts.span import in_unit
from app.facts.table import FACTS

MEGABYTE = "9" * 2**20


@dataclass(frozen=True)
class Bad:
    """A bad entry: the text for form and CSV, the value for JSON, and how the sentences begin."""

    text: Callable[[NumberFact], str]
    value: Callable[[NumberFact], object]
    for_number: str
    for_choice: str = "{label} must be one of these: "


def low(fact: NumberFact) -> str:
    return f"{in_unit(fact.can_be.low)}"


def high(fact: NumberFact) -> str:
    return f"{in_unit(fact.can_be.high)}"


def below(fact: NumberFact) -> int:
    return int(in_unit(fact.can_be.low)) - 1


def above(fact: NumberFact) -> int:
    return int(in_unit(fact.can_be.high)) + 1


def both_ways(value: str) -> Callable[[NumberFact], str]:
    return lambda _: value


NUMBER = "{label} must be a {kind}, like "
BETWEEN = "{label} must be between {low} and {high}. You typed "
BAD = {
    "rubbish": Bad(both_ways("%&/@"), both_ways("%&/@"), NUMBER),
    "too small": Bad(lambda fact: f"{below(fact)}", below, BETWEEN),
    "too large": Bad(lambda fact: f"{above(fact)}", above, BETWEEN),
    "not a number": Bad(both_ways("NaN"), lambda _: math.nan, NUMBER),
    "infinite": Bad(both_ways("Infinity"), lambda _: math.inf, NUMBER),
    "reversed": Bad(
        lambda fact: f"{high(fact)}..{low(fact)}",
        lambda fact: {"low": float(high(fact)), "high": float(low(fact))},
        "The first number must be the smaller one",
    ),
    "unknown word": Bad(both_ways("heliotrope"), both_ways("heliotrope"), NUMBER),
    "a megabyte": Bad(
        both_ways(MEGABYTE),
        both_ways(MEGABYTE),
        "{label} must be 200 characters at most. You typed 1048576.",
        "{label} must be 200 characters at most. You typed 1048576.",
    ),
}
WRONG_TYPES: list[tuple[object, str]] = [
    (True, "true"),
    ([], "[]"),
    ([1, {}], "[1, {…}]"),
    ({}, "{}"),
    ({"value": "135"}, "{value: 135}"),
    ({"low": 1}, "{low: 1}"),
    ({"low": 1, "high": 2, "tool": "eye"}, "{low: 1, high: 2, tool: eye}"),
    ({"value": 1, "plus_minus": None}, "{value: 1, plus_minus: null}"),
]
SOME_NUMBER = FACTS["dropout_width_mm"]
assert isinstance(SOME_NUMBER, NumberFact)


def begins(fact: Fact, bad: Bad) -> str:
    if isinstance(fact, ChoiceFact):
        return bad.for_choice.format(label=fact.label)
    gap = "" if fact.unit in {"", "°"} else "\u202f"
    return bad.for_number.format(
        label=fact.label,
        kind="whole number" if fact.whole else "number",
        low=low(fact),
        high=f"{high(fact)}{gap}{fact.unit}",
    )


def as_number(fact: Fact) -> NumberFact:
    """A choice is given the bad numbers of some number."""
    assert isinstance(SOME_NUMBER, NumberFact)
    return fact if isinstance(fact, NumberFact) else SOME_NUMBER


def as_csv(fields: dict[str, str]) -> str:
    out = StringIO(newline="")
    writer = csv.writer(out)
    writer.writerows([fields.keys(), fields.values()])
    return out.getvalue()


def as_json(fields: dict[str, object]) -> dict[str, dict[str, object]]:
    bike = {name: value for name, value in fields.items() if section_of(FACTS[name]) == "bike"}
    return {"bike": bike, "wish": {name: value for name, value in fields.items() if name not in bike}}
