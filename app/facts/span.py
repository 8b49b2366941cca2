"""A span: the smallest and the largest value that a reading can be, in whole thousandths of its unit.

Thousandths are integers on purpose: 128.3 - 127.3 is exactly 1.0 here, which it is not in binary floats.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from decimal import ROUND_CEILING, ROUND_FLOOR, Decimal
from fractions import Fraction
from typing import TypeAlias

Exact: TypeAlias = int | str | Decimal | Fraction

THOUSAND = 1000


def thousandths_below(value: Exact) -> int:
    """Whole thousandths at or below an exact value."""
    return math.floor(Fraction(value) * THOUSAND)


def thousandths_above(value: Exact) -> int:
    """Whole thousandths at or above an exact value."""
    return math.ceil(Fraction(value) * THOUSAND)


@dataclass(frozen=True, slots=True)
class Span:
    """Both ends belong to the span, in thousandths of the unit. Low above high is a ValueError."""

    low: int
    high: int

    def __post_init__(self) -> None:
        if self.low > self.high:
            message = f"A span runs from low to high, not from {self.low} to {self.high}."
            raise ValueError(message)

    @classmethod
    def exactly(cls, value: Exact) -> Span:
        """One value, widened outward to whole thousandths where it has more places."""
        return cls(thousandths_below(value), thousandths_above(value))

    @classmethod
    def around(cls, value: Exact, plus_minus: Exact) -> Span:
        """A reading with its uncertainty on both sides."""
        middle, half = Fraction(value), Fraction(plus_minus)
        return cls(thousandths_below(middle - half), thousandths_above(middle + half))

    @classmethod
    def between(cls, low: Exact, high: Exact) -> Span:
        """Everything from low to high."""
        return cls(thousandths_below(low), thousandths_above(high))

    @classmethod
    def outward(cls, low: float, high: float) -> Span:
        """The result of a sum in floats, rounded outward once."""
        return cls(math.floor(low * THOUSAND), math.ceil(high * THOUSAND))

    @property
    def width(self) -> int:
        """Thousandths from end to end."""
        return self.high - self.low

    @property
    def is_exact(self) -> bool:
        """Whether both ends are the same value."""
        return self.low == self.high

    @property
    def ends(self) -> tuple[float, float]:
        """Both ends as floats in the unit itself, for the sums of mechanics."""
        return self.low / THOUSAND, self.high / THOUSAND

    def __add__(self, other: Span) -> Span:
        return Span(self.low + other.low, self.high + other.high)

    def __sub__(self, other: Span) -> Span:
        return Span(self.low - other.high, self.high - other.low)

    def __neg__(self) -> Span:
        return Span(-self.high, -self.low)

    def __abs__(self) -> Span:
        if self.low >= 0:
            return self
        if self.high <= 0:
            return -self
        return Span(0, max(-self.low, self.high))

    def times(self, factor: Exact) -> Span:
        """The span multiplied by one exact number, rounded outward."""
        if isinstance(factor, int):
            ends = (self.low * factor, self.high * factor)
            return Span(*ends) if factor >= 0 else Span(ends[1], ends[0])
        low, high = sorted((self.low * Fraction(factor), self.high * Fraction(factor)))
        return Span(math.floor(low), math.ceil(high))

    def widened(self, below: int = 0, above: int = 0) -> Span:
        """The span with so many more thousandths at either end."""
        return Span(self.low - below, self.high + above)

    def holds(self, other: Span) -> bool:
        """Whether the other span lies inside this one, ends included."""
        return self.low <= other.low and other.high <= self.high

    def meets(self, other: Span) -> bool:
        """Whether the two spans share at least one point."""
        return self.low <= other.high and other.low <= self.high

    def hull(self, other: Span) -> Span:
        """The smallest span that holds both."""
        return Span(min(self.low, other.low), max(self.high, other.high))

    def at_least(self, other: Span) -> Span:
        """The larger of the two values, whatever they are."""
        return Span(max(self.low, other.low), max(self.high, other.high))

    def at_most(self, other: Span) -> Span:
        """The smaller of the two values, whatever they are."""
        return Span(min(self.low, other.low), min(self.high, other.high))


def in_unit(thousandths: int) -> Decimal:
    """Thousandths as a Decimal in the unit itself: 134600 is 134.600."""
    return Decimal(thousandths) / THOUSAND


def rounded(thousandths: int, decimals: int, *, up: bool) -> Decimal:
    """Thousandths in the unit, rounded to places, towards plus infinity or towards minus infinity."""
    step = Decimal(1).scaleb(-decimals)
    return in_unit(thousandths).quantize(step, rounding=ROUND_CEILING if up else ROUND_FLOOR)
