"""One number as it is typed, with or without a unit: 134.6, 134,6 or 5 5/16 in, kept exact."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction

from app.facts.fact import NumberFact
from app.facts.messages import AMBIGUOUS, SLASH, NotReadError
from app.facts.plain_text import FRACTION_SLASH
from app.facts.span import Span

MM_PER_INCH = Fraction(127, 5)

AMBIGUOUS_COMMA = re.compile(r"(?<![\d,])(?<!\d\.)([1-9]\d{0,2}),(\d{3})(?![\d,]|\.\d)")
DECIMAL = re.compile(r"([+-]?) ?((?:\d+(?:[.,]\d*)?|[.,]\d+)(?:e[+-]?\d{1,4})?)")
FRACTION = re.compile(rf"([+-]?) ?(?:(\d+)[ -])?(\d+)[/{FRACTION_SLASH}](\d+)")
SLASHED = re.compile(r"(\d+)/(\d+)")
INCH = r"(?:inches|inch|in|\"|'')"
UNIT_WORDS: Mapping[str, str] = {
    "": "teeth|tooth|t|speeds|speed|holes",
    "°": "degrees|degree|deg|°",
    "°C": "°c|c",
    "%": "percent|pct|%",
    "km/h": "km/h|kmh|kph",
    "min": "minutes|mins|min",
}


@dataclass(frozen=True, slots=True)
class Amount:
    """A number in the fact's unit and half the step in which it was typed."""

    value: Fraction
    half_step: Fraction


def without_unit(text: str, fact: NumberFact) -> tuple[str, bool]:
    """The text with the unit struck out, and whether the unit was the inch."""
    if fact.unit == "mm" and re.search(rf"[\d. ]{INCH}$", text):
        return _struck(text, INCH), True
    words = UNIT_WORDS.get(fact.unit, re.escape(fact.unit.casefold()))
    return _struck(text, rf"(?:{words})"), False


def amount(text: str, *, inches: bool) -> Amount | None:
    """The number that the whole text is, or None."""
    text = text.strip()
    fraction = FRACTION_SLASH in text or (inches and "/" in text)
    read = _fraction(text) if fraction else _decimal(text)
    if read is None or not inches:
        return read
    return Amount(read.value * MM_PER_INCH, read.half_step * MM_PER_INCH)


def refuse_thousands_comma(text: str) -> None:
    """Raise NotReadError where a comma could stand for thousands or for the point."""
    found = AMBIGUOUS_COMMA.search(text)
    if found:
        before, after = found.groups()
        point, joined = f"{before}.{after}", f"{before}{after}"
        raise NotReadError(AMBIGUOUS.format(typed=found[0], point=point, joined=joined))


def refuse_unclear_slash(text: str, fact: NumberFact) -> None:
    """Raise NotReadError where 1/2 could be a half or two readings; with spaces around it, it is two."""
    found = SLASHED.fullmatch(text)
    if not found or not 0 < int(found[1]) < int(found[2]):
        return
    if fact.can_be.holds(Span.exactly(Fraction(int(found[1]), int(found[2])))):
        raise NotReadError(SLASH.format(typed=text, first=found[1], second=found[2]))


def _struck(text: str, unit: str) -> str:
    return re.sub(rf"(?<=[\d. ]){unit}(?![a-z])", "", text).strip()


def _decimal(text: str) -> Amount | None:
    found = DECIMAL.fullmatch(text)
    if not found:
        return None
    number = Decimal(found[1] + found[2].replace(",", "."))
    return Amount(Fraction(number), Fraction(Decimal(1).scaleb(_exponent(number))) / 2)


def _exponent(number: Decimal) -> int:
    exponent = number.as_tuple().exponent
    return exponent if isinstance(exponent, int) else 0


def _fraction(text: str) -> Amount | None:
    found = FRACTION.fullmatch(text)
    if not found or int(found[4]) == 0:
        return None
    size = int(found[2] or 0) + Fraction(int(found[3]), int(found[4]))
    return Amount(-size if found[1] == "-" else size, Fraction(1, 2 * int(found[4])))
