"""A point known by its distance from the axle and its bearing, as its places along and beside the stay.

Both places are intervals in floats: whoever makes a span of them rounds outward, once.
"""

from __future__ import annotations

import math
from collections.abc import Callable
from typing import TypeAlias

from app.facts.span import THOUSAND, Span

Ends: TypeAlias = tuple[float, float]

QUARTER, HALF, TURN = 90 * THOUSAND, 180 * THOUSAND, 360 * THOUSAND


def _holds_direction(bearing: Span, direction: int) -> bool:
    """Whether a range of bearings holds a direction, whole turns apart; both in thousandths of a degree."""
    return bearing.low + (direction - bearing.low) % TURN <= bearing.high


def _wave(wave: Callable[[float], float], bearing: Span, crest: int, trough: int) -> Ends:
    ends = sorted(wave(math.radians(degrees)) for degrees in bearing.ends)
    low = -1.0 if _holds_direction(bearing, trough) else ends[0]
    high = 1.0 if _holds_direction(bearing, crest) else ends[1]
    return low, high


def _product(one: Ends, other: Ends) -> Ends:
    corners = [a * b for a in one for b in other]
    return min(corners), max(corners)


def along(distance_mm: Span, bearing_deg: Span) -> Ends:
    """How far along the stay the point lies, from the axle to the cranks; behind the axle is below zero."""
    return _product(distance_mm.ends, _wave(math.cos, bearing_deg, crest=0, trough=HALF))


def beside(distance_mm: Span, bearing_deg: Span) -> Ends:
    """How far the point lies above the stay's line through the axle; below it is below zero."""
    return _product(distance_mm.ends, _wave(math.sin, bearing_deg, crest=QUARTER, trough=-QUARTER))
