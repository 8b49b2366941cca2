"""Where on the stay a torque arm's clamp is best put, and how much every limit of it has in hand there.

The mechanic chooses the place along the bar, and the step of an arm that has steps; the readings are what
is not sure. For each choice every limit has a margin from its worst to its best. What can be had for
sure is the largest worst over the choices, what can be had at best the largest best: a closer reading
narrows both, whichever choice they belong to.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from functools import lru_cache
from typing import NamedTuple

import numpy as np

from app.facts.span import Span
from app.mechanics.clamp import Clamp
from app.mechanics.clamp_choices import RAD, Choices, choices_of
from app.mechanics.prism_gap import Room
from app.mechanics.ranges import Ranges

KEPT = 256


class Stay(NamedTuple):
    """The left chainstay as it was read, with what is known of stays in general.

    offset_mm, lateral_mm          centre line above the axle; centre inboard of the dropout's inner face
    clear_from_mm, clear_to_mm     the free stretch
    width_mm, height_mm            of its section
    read_at_mm                     how far from the axle lateral place and section were read
    inward_per_mm, taper_per_mm    how it comes nearer to the middle, and grows, for each mm further on
    """

    offset_mm: Span
    lateral_mm: Span
    clear_from_mm: Span
    clear_to_mm: Span
    width_mm: Span
    height_mm: Span
    read_at_mm: Span
    inward_per_mm: Span
    taper_per_mm: Span


@dataclass(frozen=True, slots=True, eq=False)
class Margins:
    """In mm: for every limit (a row) and every choice (a column) how much is in hand, at worst and at best.

    sure, possible   the choices with whole millimetres, and with all that lies between them
    alone            what each limit has in hand by itself, in the place that suits it best: a column
    """

    names: tuple[str, ...]
    hand: Ranges
    sure: Choices
    possible: Choices
    alone: Ranges

    @classmethod
    def of(cls, rows: Mapping[str, Ranges], sure: Choices, possible: Choices) -> Margins:
        """The margins of limits that are judged over these same choices."""
        hand = Ranges(
            np.array([row.low for row in rows.values()]), np.array([row.high for row in rows.values()])
        )
        alone = Ranges(hand.low.max(axis=1, keepdims=True), hand.high.max(axis=1, keepdims=True))
        return cls(tuple(rows), hand, sure, possible, alone)

    def and_also(self, name: str, row: Ranges, alone: Ranges) -> Margins:
        """The same with one more limit, which by itself may have had other choices."""
        return replace(
            self,
            names=(*self.names, name),
            hand=Ranges(np.vstack((self.hand.low, row.low)), np.vstack((self.hand.high, row.high))),
            alone=Ranges(np.vstack((self.alone.low, alone.low)), np.vstack((self.alone.high, alone.high))),
        )

    def best(self, name: str) -> Span:
        """What one limit has in hand by itself."""
        row = self.names.index(name)
        return Room(float(self.alone.low[row, 0]), float(self.alone.high[row, 0])).span()

    def together(self) -> Span:
        """What the tightest limit has in hand in the best place, beyond what a limit lacks by itself.

        A limit that no place meets is not counted twice: the others are asked how near they let it come.
        """
        worst = (self.hand.low - np.minimum(self.alone.high, 0)).min(axis=0).max()
        best = (self.hand.high - np.minimum(self.alone.low, 0)).min(axis=0).max()
        return Room(float(worst), float(best)).span()

    def choice(self) -> int:
        """The choice whose tightest limit has most in hand, in doubt by what it has at best."""
        worst, best = (np.round(end.min(axis=0), 6) for end in self.hand)
        return int(np.lexsort((best, worst))[-1])

    def tightest(self) -> str:
        """The limit that has least in hand there."""
        return self.names[int(self.hand.low[:, self.choice()].argmin())]


def span_at(ranges: Ranges, choice: int) -> Span:
    """One of many, rounded outward once."""
    return Room(float(ranges.low[choice]), float(ranges.high[choice])).span()


def _rows(clamp: Clamp, stay: Stay, chosen: Choices) -> dict[str, Ranges]:
    onward = chosen.stay_mm.less(stay.read_at_mm)
    half = clamp.half_length_mm
    behind, before = (
        chosen.stay_mm.less(stay.clear_from_mm + half),
        chosen.stay_mm.under(stay.clear_to_mm - half),
    )
    rows = {"free_stretch": behind.smaller(before)}
    if clamp.bearing_deg is not None:
        turned = chosen.bearing_deg.within(*clamp.bearing_deg)
        low, high = chosen.along_mm.low * RAD, chosen.along_mm.high * RAD
        rows["swivel"] = Ranges(
            np.minimum(turned.low * low, turned.low * high), np.maximum(turned.high * low, turned.high * high)
        )
    if chosen.aside_mm is not None and clamp.offset_mm is not None:
        rows["offset"] = chosen.aside_mm.within(*clamp.offset_mm)
    if clamp.lateral_mm is not None:
        rows["lateral"] = onward.by(stay.inward_per_mm).plus(stay.lateral_mm).within(*clamp.lateral_mm)
    if clamp.width_mm is not None:
        rows["width"] = onward.by(stay.taper_per_mm).plus(stay.width_mm).within(*clamp.width_mm)
    if clamp.height_mm is not None:
        rows["height"] = onward.by(stay.taper_per_mm).plus(stay.height_mm).within(*clamp.height_mm)
    return rows


@lru_cache(maxsize=KEPT)
def margins_of(clamp: Clamp, stay: Stay) -> Margins:
    """What every limit of a clamp has in hand on a stay, choice by choice."""
    both = choices_of(clamp, stay.offset_mm)
    sure, possible = both.halves()
    count = len(sure.along_mm.low)
    rows = {name: Ranges(row.low[:count], row.high[count:]) for name, row in _rows(clamp, stay, both).items()}
    return Margins.of(rows, sure, possible)
