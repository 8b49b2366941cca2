"""The gap between two prisms along the axle: apart in the side view, along the axle, or both.

Where the two overlap along the axle their gap is that of the side view; where they overlap in the side view
it is that along the axle; where in neither, the slanting distance. Where they overlap in both it is below
zero, by as much as the smaller of two moves that part them: along the axle, or in the side view. The latter
is the smallest one that parts the convex hulls of both outlines, so that a hollow is not made use of.

Growing either body never makes the gap larger.
"""

from __future__ import annotations

import math
from typing import NamedTuple

import numpy as np
import shapely

from app.facts.span import THOUSAND, Span
from app.mechanics.plane import DIRECTIONS, FAR_MM, Axial, Body, Shape, Spot
from app.mechanics.ranges import Values

# Far more than sums of lengths on a bike are off in floats, far less than a thousandth of a millimetre.
FLOAT_ERROR_MM = 1e-9


class Room(NamedTuple):
    """The least and the most that a gap can be, in mm, before it is rounded."""

    low: float
    high: float

    def span(self) -> Span:
        """Rounded outward once; a value that is a thousandth but for the floats' error counts as that."""
        low, high = self.low * THOUSAND, max(self.low, self.high) * THOUSAND
        blur = FLOAT_ERROR_MM * THOUSAND
        return Span(math.floor(low + blur), max(math.floor(low + blur), math.ceil(high - blur)))


def plane_gap(one: Shape, other: Shape) -> float:
    """Between two outlines in the side view, in mm; below zero where they overlap, far where one is empty."""
    if one.is_empty or other.is_empty:
        return FAR_MM
    apart = float(shapely.distance(one, other))
    if apart > 0 or shapely.touches(one, other):
        return apart
    return -float(move_apart(supports(one), supports(other)))


def supports(shape: Shape) -> Values:
    """How far an outline reaches in each of the fixed directions."""
    reach: Values = (shapely.get_coordinates(shape) @ DIRECTIONS.T).max(axis=0)
    return reach


def move_apart(one: Values, other: Values) -> Values:
    """The smallest move, in one of the fixed directions, that parts two outlines; from their supports."""
    moves: Values = (one + np.roll(other, len(DIRECTIONS) // 2, axis=-1)).min(axis=-1)
    return moves


def axial_gap(one: Axial, other: Axial) -> float:
    """Between two ranges along the axle, in mm; below zero by the smaller move that would part them."""
    return max(other[0] - one[1], one[0] - other[1])


def prism(plane_mm: Values, axial_mm: float) -> Values:
    """The gaps of prisms that are so far apart in the side view and along the axle."""
    slanting = np.hypot(plane_mm, axial_mm)
    return np.where((plane_mm > 0) & (axial_mm > 0), slanting, np.maximum(plane_mm, axial_mm))


def farthest(spot: Spot, shape: Shape) -> float:
    """The most that a point somewhere at a spot can be away from the shape, in mm.

    Below zero where it lies inside wherever it is: so far from the shape's edge at the least.
    """
    if shape.is_empty:
        return FAR_MM
    centre = shapely.Point(spot.centre)
    inside = shapely.distance(centre, shape.boundary) if shapely.covers(shape, centre) else 0.0
    return float(shapely.distance(centre, shape)) - float(inside) + spot.off_mm


def in_plane(one: Body, other: Body) -> Room:
    """The gap of two bodies in the side view alone."""
    most = [plane_gap(one.inner, other.inner)]
    most += [farthest(spot, other.inner) for spot in one.somewhere]
    most += [farthest(spot, one.inner) for spot in other.somewhere]
    return Room(plane_gap(one.outer, other.outer), min(most))


def along_axle(one: Body, other: Body) -> Room:
    """The gap of two bodies along the axle alone."""
    least = axial_gap(one.axial_outer, other.axial_outer)
    if one.axial_inner is None or other.axial_inner is None:
        return Room(least, FAR_MM)
    return Room(least, axial_gap(one.axial_inner, other.axial_inner))


def room_between(one: Body, other: Body) -> Room:
    """The gap of two prisms: the least over all places they may be, the most over where they are for sure."""
    plane, axial = in_plane(one, other), along_axle(one, other)
    low, high = (prism(np.array(flat), along) for flat, along in zip(plane, axial, strict=True))
    return Room(float(low), float(high))


def gap(one: Body, other: Body) -> Span:
    """The gap of two prisms in mm, below zero where they overlap."""
    return room_between(one, other).span()
