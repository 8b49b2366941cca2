"""Many spans at once: their low and high ends as arrays, in the unit itself."""

from __future__ import annotations

from typing import NamedTuple, TypeAlias

import numpy as np
import numpy.typing as npt

from app.facts.span import Span

Values: TypeAlias = npt.NDArray[np.float64]


class Ranges(NamedTuple):
    """Low and high ends; each operation gives every value that is possible, and no narrower."""

    low: Values
    high: Values

    def plus(self, span: Span) -> Ranges:
        """The sums with one span."""
        low, high = span.ends
        return Ranges(self.low + low, self.high + high)

    def less(self, span: Span) -> Ranges:
        """The differences from one span."""
        low, high = span.ends
        return Ranges(self.low - high, self.high - low)

    def under(self, span: Span) -> Ranges:
        """How much one span is more than each."""
        low, high = span.ends
        return Ranges(low - self.high, high - self.low)

    def by(self, span: Span) -> Ranges:
        """The products with one span that is not below zero."""
        low, high = span.ends
        return Ranges(
            np.minimum(self.low * low, self.low * high), np.maximum(self.high * low, self.high * high)
        )

    def smaller(self, other: Ranges) -> Ranges:
        """The smaller of each two."""
        return Ranges(np.minimum(self.low, other.low), np.minimum(self.high, other.high))

    def within(self, low: Span, high: Span) -> Ranges:
        """How far each lies inside of two limits; below zero where it is outside."""
        return self.less(low).smaller(self.under(high))

    def part(self, which: slice) -> Ranges:
        """Some of them."""
        return Ranges(self.low[which], self.high[which])


def products(span: Span, factors: Ranges) -> Ranges:
    """The products of one span with factors that are not below zero."""
    low, high = span.ends
    return Ranges(
        np.minimum(factors.low * low, factors.high * low), np.maximum(factors.low * high, factors.high * high)
    )


def exact_products(values: Ranges, factors: Values) -> Ranges:
    """The products with factors that are exact, of either sign."""
    one, other = values.low * factors, values.high * factors
    return Ranges(np.minimum(one, other), np.maximum(one, other))
