"""A ruled scale: where its marks stand and which numbers are written under them."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from app.report.numbers import places_needed, shown

# A rule divides by ones, twos and fives; it has so many numbers at most, and so many fine marks to each.
STEPS = (1, 2, 5)
MOST_MARKS = 6
FINE_MARKS = {1: 5, 2: 4, 5: 5}


@dataclass(frozen=True, slots=True)
class Rule:
    """A scale from low to high, in thousandths: a number every `step`, a fine mark every `fine`."""

    low: int
    high: int
    step: int
    fine: int

    @classmethod
    def over(cls, low: int, high: int, most: int = MOST_MARKS) -> Rule:
        """The finest division that writes at most so many numbers."""
        ten = 1
        while True:
            for digit in STEPS:
                step = digit * ten
                if (high - low) // step < most:
                    return cls(low, high, step, max(step // FINE_MARKS[digit], 1))
            ten *= 10

    def numbers(self) -> Iterator[tuple[int, str]]:
        """Every mark that has a number, with the number."""
        places = places_needed(self.step, 0)
        for value in _multiples(self.step, self.low, self.high):
            yield value, shown(value, places)

    def fines(self) -> Iterator[int]:
        """Every mark, fine ones included."""
        yield from _multiples(self.fine, self.low, self.high)


def _multiples(step: int, low: int, high: int) -> Iterator[int]:
    yield from range(-(-low // step) * step, high + 1, step)
