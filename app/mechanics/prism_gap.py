"""The gap between two prisms along the axle: apart in the side view, along the axle, or both.

Where the two overlap along the axle their gap is that of the side view; where they overlap in the side view
it is that along the axle; where in neither, the slanting distance. Where they overlap in both it is below
zero, by as much as the smaller of two moves that part them: along the axle, or in the side view. That move
is taken as the width of the largest disc that lies in both outlines, which is never more than the true one.

Growing either body never makes the gap larger.
"""

from __future__ import annotations

import math
from collections.abc import Iterable
from functools import lru_cache
from typing import NamedTuple, cast

import shapely
from shapely import Polygon
from shapely.geometry.base import BaseGeometry

from app.facts.span import THOUSAND, Span
from app.mechanics.plane import FAR_MM, Axial, Body, Shape

# Far more than sums of lengths on a bike are off in floats, far less than a thousandth of a millimetre.
FLOAT_ERROR_MM = 1e-9
# How closely the width of an overlap is found: it is printed in tenths.
OVERLAP_TOLERANCE_MM = 0.05
KEPT_PIECES = 512


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
    return apart if apart > 0 else -_width_of(shapely.intersection(one, other))


def _width_of(overlap: BaseGeometry) -> float:
    """The width of the largest disc inside an overlap, in mm; zero where two outlines only touch."""
    if overlap.area < FLOAT_ERROR_MM:
        return 0.0
    flat = [part for part in shapely.get_parts(overlap) if isinstance(part, Polygon)]
    radii = [shapely.maximum_inscribed_circle(part, OVERLAP_TOLERANCE_MM).length for part in flat]
    return 2.0 * float(max(radii))


def axial_gap(one: Axial, other: Axial) -> float:
    """Between two ranges along the axle, in mm; below zero by the smaller move that would part them."""
    return max(other[0] - one[1], one[0] - other[1])


def prism(plane_mm: float, axial_mm: float) -> float:
    """The gap of two prisms that are so far apart in the side view and along the axle."""
    if plane_mm > 0 and axial_mm > 0:
        return math.hypot(plane_mm, axial_mm)
    return max(plane_mm, axial_mm)


@lru_cache(maxsize=KEPT_PIECES)
def _pieces(outline: bytes) -> tuple[Polygon, ...]:
    """Convex pieces that together make up an outline: triangles, joined while they stay convex."""
    pieces: list[Polygon] = list(shapely.get_parts(shapely.constrained_delaunay_triangles(_shape(outline))))
    joined: list[Polygon] = []
    while pieces:
        piece = pieces.pop()
        for other in pieces:
            both = shapely.union(piece, other)
            if isinstance(both, Polygon) and both.convex_hull.area - both.area < FLOAT_ERROR_MM:
                pieces.remove(other)
                pieces.append(both)
                break
        else:
            joined.append(piece)
    return tuple(joined)


def _shape(outline: bytes) -> Shape:
    return cast("Shape", shapely.from_wkb(outline))


def convex_pieces(shape: Shape) -> tuple[Polygon, ...]:
    """Convex pieces that together make up the shape; itself where it is convex."""
    if shape.is_empty:
        return ()
    if isinstance(shape, Polygon) and shape.convex_hull.area - shape.area < FLOAT_ERROR_MM:
        return (shape,)
    return _pieces(shapely.to_wkb(shape))


def farthest(place: Polygon, shape: Shape) -> float:
    """The most that a point somewhere in a convex place can be away from the shape, in mm.

    Below zero where the whole place lies inside: as far as its nearest point lies from the shape's edge.
    Otherwise never less than the true distance: that to the best of the shape's convex pieces.
    """
    if shape.is_empty:
        return FAR_MM
    if shapely.covers(shape, place):
        return -float(shapely.distance(place, shape.boundary))
    corners = shapely.points(shapely.get_coordinates(place))
    return min(float(shapely.distance(corners, piece).max()) for piece in convex_pieces(shape))


def _most_in_plane(one: Body, other: Body) -> float:
    found = [plane_gap(one.inner, other.inner)]
    found += [farthest(place, other.inner) for place in one.somewhere]
    found += [farthest(place, one.inner) for place in other.somewhere]
    return min(found)


def in_plane(one: Body, other: Body) -> Room:
    """The gap of two bodies in the side view alone."""
    return Room(plane_gap(one.outer, other.outer), _most_in_plane(one, other))


def along_axle(one: Body, other: Body) -> Room:
    """The gap of two bodies along the axle alone."""
    least = axial_gap(one.axial_outer, other.axial_outer)
    if one.axial_inner is None or other.axial_inner is None:
        return Room(least, FAR_MM)
    return Room(least, axial_gap(one.axial_inner, other.axial_inner))


def room_between(one: Body, other: Body) -> Room:
    """The gap of two prisms: the least over all places they may be, the most over where they are for sure."""
    plane, axial = in_plane(one, other), along_axle(one, other)
    return Room(prism(plane.low, axial.low), prism(plane.high, axial.high))


def gap(one: Body, other: Body) -> Span:
    """The gap of two prisms in mm, below zero where they overlap."""
    return room_between(one, other).span()


def smallest(rooms: Iterable[Room]) -> Room:
    """The gap to the nearest of several bodies; far where there is none."""
    listed = tuple(rooms)
    return Room(
        min((each.low for each in listed), default=FAR_MM),
        min((each.high for each in listed), default=FAR_MM),
    )
