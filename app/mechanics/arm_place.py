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
from app.mechanics.prism_gap import Room
from app.mechanics.ranges import Ranges, Values

KEPT = 256
STEP_MM = 1.0
RAD = np.pi / 180


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


class Choices(NamedTuple):
    """Each choice: the clamp's middle along the bar and along the stay, in mm, and the bar's bearing.

    aside_mm   how far the stay's centre is off the bar of an arm with steps, square to it; else nothing
    """

    along_mm: Ranges
    stay_mm: Ranges
    bearing_deg: Ranges
    aside_mm: Ranges | None


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


def _along(clamp: Clamp, between_mm: float) -> Ranges:
    """Where the clamp's middle can be along the bar: its holes, or every whole millimetre of its reach."""
    if clamp.places_mm:
        ends = np.array([place.ends for place in clamp.places_mm])
        return Ranges(ends[:, 0], ends[:, 1])
    first, last = np.ceil(clamp.nearest_mm.ends[0]), np.floor(clamp.farthest_mm.ends[1])
    whole = np.arange(first, max(first, last) + STEP_MM, STEP_MM)
    return Ranges(whole - between_mm, whole + between_mm)


def _turned(clamp: Clamp, stay: Stay, between_mm: float) -> Choices:
    """An arm that turns points at the stay's centre wherever its clamp is."""
    along, offset = _along(clamp, between_mm), Ranges.of(stay.offset_mm)
    slope = offset.by(Ranges(1 / along.high, 1 / along.low))
    bearing = Ranges(*(np.degrees(np.arcsin(np.clip(end, -1, 1))) for end in slope))
    off_low, off_high = abs(stay.offset_mm).ends
    on_stay = [
        np.sqrt(np.maximum(end**2 - off**2, 0)) for end, off in zip(along, (off_high, off_low), strict=True)
    ]
    return Choices(along, Ranges(*on_stay), bearing, None)


def _stepped(clamp: Clamp, stay: Stay, between_mm: float) -> Choices:
    """An arm with steps: its clamp reaches square to the bar for the stay."""
    steps = np.array([step.ends[0] for step in clamp.steps_deg]) * RAD
    one = _along(clamp, between_mm)
    along = Ranges(np.tile(one.low, len(steps)), np.tile(one.high, len(steps)))
    angle = np.repeat(steps, len(one.low))
    turn, square = _exactly(np.tan(angle)), _exactly(1 / np.cos(angle))
    offset = Ranges.of(stay.offset_mm)
    aside = offset.by(square).less(along.by(turn))
    degrees = _exactly(angle / RAD)
    return Choices(along, along.by(square).less(offset.by(turn)), degrees, aside)


def _exactly(values: Values) -> Ranges:
    return Ranges(values, values)


def choices(clamp: Clamp, stay: Stay, between_mm: float) -> Choices:
    """Every choice; `between_mm` to either side of a whole millimetre belongs to it."""
    return _turned(clamp, stay, between_mm) if clamp.turns else _stepped(clamp, stay, between_mm)


def _rows(clamp: Clamp, stay: Stay, chosen: Choices) -> dict[str, Ranges]:
    half = Ranges.of(clamp.half_length_mm)
    onward = chosen.stay_mm.less(Ranges.of(stay.read_at_mm))
    grown = onward.by(Ranges.of(stay.taper_per_mm))
    begins, ends = chosen.stay_mm.less(half), chosen.stay_mm.plus(half)
    rows = {
        "free_stretch": begins.less(Ranges.of(stay.clear_from_mm)).smaller(
            Ranges.of(stay.clear_to_mm).less(ends)
        )
    }
    if clamp.bearing_deg is not None:
        turned = chosen.bearing_deg.within(*clamp.bearing_deg)
        rows["swivel"] = turned.by(Ranges(chosen.along_mm.low * RAD, chosen.along_mm.high * RAD))
    if chosen.aside_mm is not None and clamp.offset_mm is not None:
        rows["offset"] = chosen.aside_mm.within(*clamp.offset_mm)
    if clamp.lateral_mm is not None:
        inward = onward.by(Ranges.of(stay.inward_per_mm)).plus(Ranges.of(stay.lateral_mm))
        rows["lateral"] = inward.within(*clamp.lateral_mm)
    for name, limits, reading in (
        ("width", clamp.width_mm, stay.width_mm),
        ("height", clamp.height_mm, stay.height_mm),
    ):
        if limits is not None:
            rows[name] = grown.plus(Ranges.of(reading)).within(*limits)
    return rows


@lru_cache(maxsize=KEPT)
def margins_of(clamp: Clamp, stay: Stay) -> Margins:
    """What every limit of a clamp has in hand on a stay, choice by choice."""
    sure, possible = choices(clamp, stay, 0), choices(clamp, stay, STEP_MM / 2)
    worst, best = _rows(clamp, stay, sure), _rows(clamp, stay, possible)
    rows = {name: Ranges(worst[name].low, best[name].high) for name in worst}
    return Margins.of(rows, sure, possible)
