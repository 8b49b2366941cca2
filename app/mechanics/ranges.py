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

    @classmethod
    def of(cls, span: Span) -> Ranges:
        """One span, to be joined with many."""
        low, high = span.ends
        return cls(np.array([low]), np.array([high]))

    def plus(self, other: Ranges) -> Ranges:
        """The sums."""
        return Ranges(self.low + other.low, self.high + other.high)

    def less(self, other: Ranges) -> Ranges:
        """The differences."""
        return Ranges(self.low - other.high, self.high - other.low)

    def by(self, factor: Ranges) -> Ranges:
        """The products."""
        corners = [one * other for one in self for other in factor]
        return Ranges(np.minimum.reduce(corners), np.maximum.reduce(corners))

    def smaller(self, other: Ranges) -> Ranges:
        """The smaller of each two."""
        return Ranges(np.minimum(self.low, other.low), np.minimum(self.high, other.high))

    def within(self, low: Span, high: Span) -> Ranges:
        """How far each lies inside of two limits; below zero where it is outside."""
        return self.less(Ranges.of(low)).smaller(Ranges.of(high).less(self))
