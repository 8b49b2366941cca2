"""How a torque arm's clamp meets the stay, limit by limit, each in the place that suits that limit best."""

from __future__ import annotations

import math
from functools import reduce

from app.catalogue.arm_steps import Between
from app.facts.span import THOUSAND, Span
from app.mechanics.arm_place import Stay, margins_of
from app.mechanics.clamp import Clamp
from app.mechanics.stays import further_on

NOTHING = Span(0, 0)


def stretch_in_reach(
    *, clear_from_mm: Span, clear_to_mm: Span, reach_from_mm: Span, reach_to_mm: Span
) -> Span:
    """Length of stay that is both free and within reach, in mm; below zero where the two don't meet.

    All four are distances from the axle's centre along the stay.
    """
    return clear_to_mm.at_most(reach_to_mm) - clear_from_mm.at_least(reach_from_mm)


def free_within_reach(clamp: Clamp, *, clear_from_mm: Span, clear_to_mm: Span, offset_mm: Span) -> Span:
    """Length of free stay for the clamp, in mm, where it has most of it.

    offset_mm   how far the stay passes above the axle: an arm that has to turn reaches less far along it
    """
    if not clamp.turns and clamp.steps_deg != (NOTHING,):
        return _by_steps(clamp, clear_from_mm, clear_to_mm, offset_mm)
    if clamp.places_mm:
        rooms = [_around(_on_stay(clamp, p, offset_mm), clear_from_mm, clear_to_mm) for p in clamp.places_mm]
        return reduce(Span.at_least, rooms)
    return stretch_in_reach(
        clear_from_mm=clear_from_mm,
        clear_to_mm=clear_to_mm,
        reach_from_mm=_on_stay(clamp, clamp.reach_from_mm, offset_mm),
        reach_to_mm=_on_stay(clamp, clamp.reach_to_mm, offset_mm),
    )


def _around(place: Span, clear_from: Span, clear_to: Span) -> Span:
    """The free stretch that has the clamp in its middle."""
    return (place - clear_from).at_most(clear_to - place).times(2)


def _by_steps(clamp: Clamp, clear_from: Span, clear_to: Span, offset: Span) -> Span:
    stay = Stay(offset, NOTHING, clear_from, clear_to, *[NOTHING] * 5)
    in_hand = margins_of(clamp._replace(lateral_mm=None, width_mm=None, height_mm=None), stay)
    return (in_hand.best("free_stretch") + clamp.half_length_mm).times(2)


def _on_stay(clamp: Clamp, along: Span, offset: Span) -> Span:
    """A distance along the bar as one along the stay, the bar pointing at the stay as far as it can."""
    if clamp.bearing_deg is None:
        return along
    most = math.radians(max(-clamp.bearing_deg[0].ends[0], clamp.bearing_deg[1].ends[1], 0))
    near, far = abs(offset).ends
    low, high = along.ends
    return Span.outward(_beside(low, far, most), _beside(high, near, most))


def _beside(along: float, off: float, most: float) -> float:
    return max(math.sqrt(max(along**2 - off**2, 0)), along * math.cos(most))


def bar_bearing(clamp: Clamp, limits: Between, offset_mm: Span) -> Span:
    """The angle in degrees from the stay up to the bar of an arm that turns, in the place that suits it best.

    It points at a stay that passes so far above the axle, from the place nearest to the middle of its limits.
    """
    wanted = (limits[0].low + limits[1].high) / 2 / THOUSAND
    near, far = clamp.nearest_mm.ends[0], clamp.farthest_mm.ends[1]

    def best(offset: float) -> float:
        ends = sorted(math.degrees(math.asin(max(-1.0, min(1.0, offset / at)))) for at in (near, far))
        return min(max(wanted, ends[0]), ends[1])

    return Span.outward(*(best(offset) for offset in offset_mm.ends))


def stay_beside_clamp(
    clamp: Clamp, limits: Between, *, lateral_mm: Span, inward_per_mm: Span, read_at_mm: Span
) -> Span:
    """The stay's place inboard of the dropout's face, in mm, at the place of the clamp that suits it best."""
    at_near, at_far = (
        further_on(reading_mm=lateral_mm, per_mm=inward_per_mm, read_at_mm=read_at_mm, place_mm=place)
        for place in (clamp.nearest_mm, clamp.farthest_mm)
    )
    middle = (limits[0].low + limits[1].high) // 2
    return at_near.at_least(Span(middle, middle)).at_most(at_far)


def clamp_lever(clamp: Clamp, clear_to_mm: Span) -> Span:
    """The lever in mm of a clamp put as far from the axle as the stay is free, never less than its least."""
    if not clamp.places_mm:
        farthest = clear_to_mm.at_most(clamp.reach_to_mm) - clamp.half_length_mm
        return farthest.at_least(clamp.nearest_mm)
    return reduce(Span.at_least, (_if_free(clamp, place, clear_to_mm) for place in clamp.places_mm))


def _if_free(clamp: Clamp, place: Span, clear_to: Span) -> Span:
    """A hole as far as the stay is free there; else the nearest hole."""
    end, nearest = place + clamp.half_length_mm, clamp.places_mm[0]
    sure, possible = end.high <= clear_to.low, end.low <= clear_to.high
    return Span((place if sure else nearest).low, (place if possible else nearest).high)
