"""How far a torque arm keeps clear of the brake caliper, at each angle at which it can sit on the axle.

The mechanic chooses the angle, so that the arm clears as well as it does at its best one.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from functools import lru_cache
from typing import NamedTuple, TypeAlias

import numpy as np
import shapely

from app.facts.span import Span
from app.mechanics.arm_outline import ArmMeasures, arm_body
from app.mechanics.caliper_envelope import Readings, caliper
from app.mechanics.caliper_solids import Tables
from app.mechanics.plane import FAR_MM, Body, Shape, Spot, at, polar
from app.mechanics.prism_gap import Room, along_axle, move_apart, prism, supports
from app.mechanics.ranges import Ranges, Values

KEPT_ANSWERS, KEPT_ARMS = 4096, 256
# Nobody asks for more room than this between arm and caliper, so that nothing beyond it need be certain. The
# catalogue refuses a part that does.
MOST_WANTED_MM = 5.0

# Gaps that differ by less are alike.
ALIKE_MM = 0.05

Angles: TypeAlias = tuple[float, ...]
# One gap from that in the side view and that along the axle; it grows with either.
Measure: TypeAlias = Callable[[Values, float], Values]


# Common practice: so much room seen from the side, or along the axle.
WANTED_IN_PLANE_MM, WANTED_ALONG_AXLE_MM = 2.0, 1.0


def spare(plane_mm: Values, axial_mm: float) -> Values:
    """How much more room there is than practice wants, in the view that has more of it."""
    room: Values = np.maximum(plane_mm - WANTED_IN_PLANE_MM, axial_mm - WANTED_ALONG_AXLE_MM)
    return room


class Beside(NamedTuple):
    """One body of the caliper beside the arm: the gap in the side view at each angle, and along the axle."""

    plane: Ranges
    axial: Room


class Clearance(NamedTuple):
    """What the arm has at its best: the gap, the angle that is sure of most of it, and its gaps there."""

    gap_mm: Span
    index_deg: float
    plane_mm: Span
    axial_mm: Span


class Outlines:
    """One outline in many positions."""

    def __init__(self, shapes: Sequence[Shape]) -> None:
        self.shapes = np.array(shapes)
        self.supports = np.array([supports(shape) for shape in shapes])
        shapely.prepare(self.shapes)

    def gaps(self, other: Shape) -> Values:
        """The gap in the side view between each of them and another outline."""
        if other.is_empty:
            return np.full(len(self.shapes), FAR_MM)
        found: Values = shapely.distance(self.shapes, other)
        met = np.flatnonzero(found == 0)
        overlapping = met[~shapely.touches(self.shapes[met], other)]
        found[overlapping] = -move_apart(self.supports[overlapping], supports(other))
        return found


class Turning:
    """An arm at every one of its angles, as it is asked about again and again."""

    def __init__(self, arm: ArmMeasures, angles: Angles) -> None:
        bodies = [arm_body(arm, angle) for angle in angles]
        self.angles, self.body = angles, arm_body(arm, 0.0)
        self.outer = Outlines([body.outer for body in bodies])
        self.inner = Outlines([body.inner for body in bodies])
        self.edge = shapely.boundary(self.body.inner)
        shapely.prepare([self.body.inner, self.edge])

    def beside(self, other: Body) -> Beside:
        """Its gaps to one body of the caliper."""
        most = self.inner.gaps(other.inner)
        for spot in other.somewhere:
            most = np.minimum(most, self._to_spot(spot))
        return Beside(Ranges(self.outer.gaps(other.outer), most), along_axle(self.body, other))

    def _to_spot(self, spot: Spot) -> Values:
        """The most that a point at a spot is away, below zero inside: the spot is turned, not the arm."""
        distance, bearing = polar(spot.centre)
        points = shapely.points([at(distance, bearing - angle) for angle in self.angles])
        inside = shapely.covers(self.body.inner, points)
        apart: Values = shapely.distance(self.body.inner, points) - np.where(
            inside, shapely.distance(self.edge, points), 0.0
        )
        return apart + spot.off_mm


@lru_cache(maxsize=KEPT_ARMS)
def _turning(arm: ArmMeasures, angles: Angles) -> Turning:
    return Turning(arm, angles)


# A body is remembered by itself: the near end's are the same whether or not the far end is asked about.
@lru_cache(maxsize=KEPT_ANSWERS)
def _beside(arm: ArmMeasures, angles: Angles, body: Body) -> Beside:
    """The arm beside one body of the caliper, worked out once."""
    return _turning(arm, angles).beside(body)


@lru_cache(maxsize=KEPT_ANSWERS)
def _from_outer(arm: ArmMeasures, angles: Angles, body: Body) -> Beside:
    """The same, were both as large as they may be."""
    turning = _turning(arm, angles)
    gaps = turning.outer.gaps(body.outer)
    return Beside(Ranges(gaps, gaps), along_axle(turning.body, body))


def _certain(
    arm: ArmMeasures, angles: Angles, readings: Readings, tables: Tables, measure: Measure
) -> Values:
    """The most room at each angle that a closer reading can still find beside the published mount."""
    sure = [_from_outer(arm, angles, body) for body in caliper(readings, tables).sure]
    gaps = [measure(each.plane.low, each.axial.low) for each in sure]
    return np.min(gaps, axis=0) if gaps else np.full(len(angles), -FAR_MM)


def _besides(arm: ArmMeasures, angles: Angles, readings: Readings, tables: Tables) -> list[Beside]:
    return [_beside(arm, angles, body) for body in caliper(readings, tables).bodies]


def at_each_angle(
    arm: ArmMeasures, angles: Angles, readings: Readings, tables: Tables, measure: Measure = prism
) -> Ranges:
    """The gap to the nearest body at each angle, in mm: the least and the most that it can be."""
    besides = _besides(arm, angles, readings, tables)
    low = np.min([measure(each.plane.low, each.axial.low) for each in besides], axis=0)
    high = np.min([measure(each.plane.high, each.axial.high) for each in besides], axis=0)
    if (high < MOST_WANTED_MM).any():
        certain = _certain(arm, angles, readings, tables, measure)
        high = np.maximum(high, np.minimum(certain, MOST_WANTED_MM))
    return Ranges(low, np.maximum(low, high))


def _straightest_of_the_best(gaps: Values, angles: Angles) -> int:
    """Of the angles that leave most room, but for what nobody can measure, the one nearest to the stay's."""
    return int(np.lexsort((np.abs(angles), -np.floor(gaps / ALIKE_MM)))[0])


@lru_cache(maxsize=KEPT_ANSWERS)
def clearance(
    arm: ArmMeasures, angles: Angles, readings: Readings, tables: Tables, measure: Measure = prism
) -> Clearance:
    """The most room that any of the angles leaves between arm and caliper."""
    gaps = at_each_angle(arm, angles, readings, tables, measure)
    chosen = _straightest_of_the_best(gaps.low, angles)
    besides = _besides(arm, angles, readings, tables)
    nearest = min(besides, key=lambda each: float(measure(each.plane.low, each.axial.low)[chosen]))
    plane = Room(float(nearest.plane.low[chosen]), min(float(each.plane.high[chosen]) for each in besides))
    whole = Room(float(gaps.low.max()), float(gaps.high.max()))
    return Clearance(whole.span(), angles[chosen], plane.span(), nearest.axial.span())
