"""The ways in which a number may be written: one reading or up to three, a ±, a range, a limit, or a ?."""

from __future__ import annotations

import re
from dataclasses import dataclass
from decimal import Decimal
from typing import TypeAlias

from app.facts.amounts import Amount, amount, refuse_thousands_comma, refuse_unclear_slash, without_unit
from app.facts.fact import NumberFact
from app.facts.messages import DOTS, NUMBER, READINGS, ROUND_NUMBER, WHOLE_NUMBER, NotReadError
from app.facts.plain_text import plain, says_not_known
from app.facts.span import in_unit

MOST_READINGS = 3


@dataclass(frozen=True, slots=True)
class Around:
    """One or more readings of the same thing; `half_step_counts` where they were typed in inches."""

    readings: tuple[Amount, ...]
    plus_minus: Amount | None
    half_step_counts: bool


@dataclass(frozen=True, slots=True)
class Between:
    """From low to high; an end that is None is the fact's own."""

    low: Amount | None
    high: Amount | None


Written: TypeAlias = Around | Between


def written(fact: NumberFact, typed: str) -> Written | None:
    """What the text says; None for 'not known'. Raises NotReadError."""
    text = plain(typed)
    if says_not_known(text):
        return None
    refuse_thousands_comma(text)
    body, inches = without_unit(text, fact)
    if not inches:
        refuse_unclear_slash(body, fact)
    found = _limit(body, inches=inches) or _range(fact, body, inches=inches) or _around(body, inches=inches)
    if found is None:
        raise NotReadError(number_expected(fact))
    if fact.whole and not all(each.value.denominator == 1 for each in amounts_of(found)):
        raise NotReadError(number_expected(fact))
    return found


def amounts_of(found: Written) -> list[Amount]:
    """All numbers in what was written."""
    given = (*found.readings, found.plus_minus) if isinstance(found, Around) else (found.low, found.high)
    return [each for each in given if each is not None]


def number_expected(fact: NumberFact) -> str:
    """The sentence that shows what a number of this fact looks like."""
    whole = round(in_unit((fact.usual.low + fact.usual.high) // 2))
    template = WHOLE_NUMBER if fact.whole else NUMBER if fact.decimals else ROUND_NUMBER
    return template.format(label=fact.label, whole=whole, broken=whole - Decimal("0.4"))


def is_signed(fact: NumberFact) -> bool:
    """Whether the fact can be below zero, so that a hyphen in it is a minus."""
    return fact.can_be.low < 0


def _limit(body: str, *, inches: bool) -> Between | None:
    end = amount(body[1:], inches=inches) if body[:1] in {"<", ">"} else None
    if end is None:
        return None
    return Between(None, end) if body[0] == "<" else Between(end, None)


def _range(fact: NumberFact, body: str, *, inches: bool) -> Between | None:
    low, dots, high = body.replace(" to ", "..").partition("..")
    if dots:
        return _between(low, high, inches=inches)
    if amount(body, inches=inches):
        return None
    splits = [_between(body[:at], body[at + 1 :], inches=inches) for at in _inner_hyphens(body)]
    found = [each for each in splits if each is not None]
    if len(found) != 1:
        return None
    if is_signed(fact):
        low_end, high_end = (f"{in_unit(end):.0f}" for end in (fact.usual.low, fact.usual.high))
        raise NotReadError(DOTS.format(low=low_end, high=high_end))
    return found[0]


def _inner_hyphens(body: str) -> list[int]:
    return [found.start() for found in re.finditer(r"(?<=[\d. ])-(?= ?[\d.,])", body) if found.start() > 0]


def _between(low: str, high: str, *, inches: bool) -> Between | None:
    first, second = amount(low, inches=inches), amount(high, inches=inches)
    return Between(first, second) if first is not None and second is not None else None


def _around(body: str, *, inches: bool) -> Around | None:
    before, sign, after = body.partition("±")
    plus_minus = amount(after, inches=inches)
    if sign and (plus_minus is None or plus_minus.value < 0):
        return None
    parts = re.split(r";| / " if inches else r"[;/]", before)
    readings = [amount(part, inches=inches) for part in parts]
    known = tuple(reading for reading in readings if reading is not None)
    if len(known) != len(parts):
        return None
    if len(known) > MOST_READINGS:
        raise NotReadError(READINGS)
    return Around(known, plus_minus, half_step_counts=inches)
