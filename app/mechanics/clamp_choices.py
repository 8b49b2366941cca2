"""What a mechanic can choose: where on the bar the clamp goes, and at which step an arm with steps sits."""

from __future__ import annotations

import math
from typing import NamedTuple

import numpy as np

from app.facts.span import Span
from app.mechanics.clamp import Clamp
from app.mechanics.ranges import Ranges, Values, exact_products, products

STEP_MM = 1.0
RAD = math.pi / 180


class Choices(NamedTuple):
    """Each choice: the clamp's middle along the bar and along the stay, in mm, and the bar's bearing.

    aside_mm   how far the stay's centre is off the bar of an arm with steps, square to it; else None
    """

    along_mm: Ranges
    stay_mm: Ranges
    bearing_deg: Ranges
    aside_mm: Ranges | None

    def halves(self) -> tuple[Choices, Choices]:
        """The choices themselves, and the same with all that lies between them."""
        count = len(self.along_mm.low) // 2
        return self._of(slice(count)), self._of(slice(count, None))

    def _of(self, part: slice) -> Choices:
        along, on_stay, bearing = (each.part(part) for each in self[:3])
        return Choices(along, on_stay, bearing, None if self.aside_mm is None else self.aside_mm.part(part))


def choices_of(clamp: Clamp, offset_mm: Span) -> Choices:
    """Every choice, and then every choice again with all that lies between it and its neighbours."""
    if clamp.turns:
        return _turned(_along(clamp, 1), offset_mm)
    steps = np.array([step.ends[0] for step in clamp.steps_deg]) * RAD
    return _stepped(_along(clamp, len(steps)), steps, offset_mm)


def _along(clamp: Clamp, times: int) -> Ranges:
    """The clamp's middle along the bar, for each step: its holes, or every whole millimetre of its reach."""
    if clamp.places_mm:
        ends = np.array([place.ends for place in clamp.places_mm * (2 * times)])
        return Ranges(ends[:, 0], ends[:, 1])
    first, last = math.ceil(clamp.nearest_mm.ends[0]), math.floor(clamp.farthest_mm.ends[1])
    whole = np.tile(np.arange(first, max(first, last) + STEP_MM, STEP_MM), times)
    low, high = (np.concatenate((whole, whole + side)) for side in (-STEP_MM / 2, STEP_MM / 2))
    return Ranges(low, high)


def _turned(along: Ranges, offset: Span) -> Choices:
    """An arm that turns points at the stay's centre wherever its clamp is."""
    slope = products(offset, Ranges(1 / along.high, 1 / along.low))
    bearing = Ranges(*(np.arcsin(np.clip(end, -1, 1)) / RAD for end in slope))
    near, far = abs(offset).ends
    low, high = (np.sqrt(np.maximum(end**2 - off**2, 0)) for end, off in zip(along, (far, near), strict=True))
    return Choices(along, Ranges(low, high), bearing, None)


def _stepped(along: Ranges, steps: Values, offset: Span) -> Choices:
    """An arm with steps: its clamp reaches square to the bar for the stay."""
    angle = np.tile(np.repeat(steps, len(along.low) // (2 * len(steps))), 2)
    turn, square = np.tan(angle), 1 / np.cos(angle)
    low, high = offset.ends
    rise = exact_products(along, turn)
    lean = exact_products(Ranges(np.full_like(turn, low), np.full_like(turn, high)), turn)
    aside = Ranges(low * square - rise.high, high * square - rise.low)
    on_stay = Ranges(along.low * square - lean.high, along.high * square - lean.low)
    return Choices(along, on_stay, Ranges(angle / RAD, angle / RAD), aside)
