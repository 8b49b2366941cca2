"""The side view as plane geometry: places around the axle, and bodies whose edges are known only so well.

Seen from the left. The origin is the axle's centre, +x runs along the left chainstay towards the cranks
(bearing 0), +y towards the seatstay (bearing 90). Axial places run inboard in mm from the innermost face of
the left dropout, from which rotor and arm are measured too; outboard is below zero. Lengths are mm, bearings
degrees.

Nothing here may know less after a closer reading: round things are polygons with sides in fixed directions,
and what turns by an unknown angle is swept over the same whole degrees whatever the reading, so that the
outer shape of a closer reading lies inside the old one and the inner shape around it.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from typing import NamedTuple, TypeAlias, cast

import numpy as np
import numpy.typing as npt
import shapely
from shapely import LineString, MultiPolygon, Polygon

Shape: TypeAlias = Polygon | MultiPolygon
Axial: TypeAlias = tuple[float, float]
Point: TypeAlias = tuple[float, float]
Points: TypeAlias = npt.NDArray[np.float64]

NOTHING = Polygon()
# So far apart is what isn't there at all: more than any two places on a rear end.
FAR_MM = 1000.0

SIDES = 72
# A swept shape is made of steps of one degree, or of fifteen where the reading is wider than this.
WIDE_DEG, COARSE_DEG = 30, 15
TURN_DEG = 360


class Spot(NamedTuple):
    """A point that is known so well: no further off than this from its centre."""

    centre: Point
    off_mm: float


@dataclass(frozen=True, slots=True, eq=False)
class Body:
    """A prism along the axle: its outline in the side view, and from where to where it reaches.

    outer, axial_outer  everywhere it may be
    inner, axial_inner  where it is for sure; low above high where it only lies somewhere between, None where
                        nothing at all is known of it
    somewhere           spots at each of which it has at least one point, such as a measured one
    """

    name: str
    outer: Shape
    inner: Shape
    axial_outer: Axial
    axial_inner: Axial | None
    somewhere: tuple[Spot, ...] = ()


def at(distance: float, bearing_deg: float) -> Point:
    """The place so far from the axle in that direction."""
    angle = math.radians(bearing_deg)
    return distance * math.cos(angle), distance * math.sin(angle)


def polar(place: Point) -> tuple[float, float]:
    """Distance from the axle and bearing of a place."""
    return math.hypot(*place), math.degrees(math.atan2(place[1], place[0]))


def _directions(count: int) -> Points:
    angles = np.arange(count) * (2 * math.pi / count)
    return np.column_stack((np.cos(angles), np.sin(angles)))


_ROUND = _directions(SIDES)
# The whole degrees, in which outlines are moved apart.
DIRECTIONS = _directions(TURN_DEG)
_BULGE = 1 / math.cos(math.pi / SIDES)


def round_outside(centre: Point, radius: float) -> Polygon:
    """A polygon that holds the whole disc, its sides in the same directions wherever it lies."""
    return Polygon(_ROUND * (radius * _BULGE) + np.asarray(centre))


def round_inside(centre: Point, radius: float) -> Polygon:
    """A polygon within the disc; nothing where the radius is not above zero."""
    return Polygon(_ROUND * radius + np.asarray(centre)) if radius > 0 else NOTHING


def _turning(degrees: float, scale: float = 1.0) -> Points:
    angle = math.radians(degrees)
    cosine, sine = math.cos(angle) * scale, math.sin(angle) * scale
    return np.array(((cosine, sine), (-sine, cosine)))


def turned(shape: Shape, degrees: float, scale: float = 1.0) -> Shape:
    """The shape turned about the axle from the stay towards the seatstay, and drawn larger about it."""
    matrix = _turning(degrees, scale)
    return shapely.transform(shape, lambda points: points @ matrix)


def _grid(low_deg: float, high_deg: float) -> range:
    """Whole degrees around both ends: every one, or every fifteenth where there are many."""
    first, last = math.floor(low_deg), math.ceil(high_deg)
    if last - first <= WIDE_DEG:
        return range(first, max(last, first + 1) + 1)
    low, high = first // COARSE_DEG * COARSE_DEG, -(-last // COARSE_DEG) * COARSE_DEG
    return range(low, min(high, low + TURN_DEG) + 1, COARSE_DEG)


def _cell(points: Points, first_deg: float, step_deg: float) -> Polygon:
    """All places of a convex outline that turns by one step.

    A point's arc lies in the triangle of its chord and the tangents at both ends, so the middle position is
    drawn larger until it reaches the place where the tangents meet.
    """
    half = step_deg / 2
    places = [
        points @ _turning(first_deg),
        points @ _turning(first_deg + half, 1 / math.cos(math.radians(half))),
        points @ _turning(first_deg + step_deg),
    ]
    return _hull(np.vstack(places))


def _hull(points: Points) -> Polygon:
    return cast("Polygon", shapely.convex_hull(LineString(points)))


def swept(convex: Polygon, low_deg: float, high_deg: float) -> Shape:
    """Everywhere that a convex outline can be, turned about the axle by an angle from low to high."""
    grid = _grid(low_deg, high_deg)
    points = shapely.get_coordinates(convex)
    cells = [_cell(points, first, grid.step) for first in grid[:-1]]
    return union(cells)


def kept(convex: Polygon, low_deg: float, high_deg: float) -> Polygon:
    """What a convex outline covers whatever the angle, from low to high, by which it is turned."""
    grid = _grid(low_deg, high_deg)
    if convex.is_empty or grid.step != 1:
        return NOTHING
    shapes = [turned(convex, degrees) for degrees in grid]
    flat = math.cos(math.radians(0.5))
    shapes += [turned(convex, degrees + 0.5, flat) for degrees in grid[:-1]]
    common = shapely.intersection_all(shapes)
    return common if isinstance(common, Polygon) else NOTHING


def spot(distance: Axial, bearing_deg: Axial) -> Spot:
    """The same point as a disc around the middle of both readings."""
    half_turn = math.radians(bearing_deg[1] - bearing_deg[0]) / 2
    off = (distance[1] - distance[0]) / 2 + distance[1] * half_turn
    return Spot(at(sum(distance) / 2, sum(bearing_deg) / 2), off)


def sector(distance: Axial, bearing_deg: Axial) -> Shape:
    """All places of a point known by its distance from the axle and its bearing."""
    near, far = distance
    grid = _grid(*bearing_deg)
    half = grid.step / 2
    cells = [
        _hull(
            np.array(
                [
                    at(near, first),
                    at(near, first + grid.step),
                    at(far, first),
                    at(far / math.cos(math.radians(half)), first + half),
                    at(far, first + grid.step),
                ]
            )
        )
        for first in grid[:-1]
    ]
    return union(cells)


def around(*shapes: Shape) -> Polygon:
    """The smallest convex outline that holds all the shapes."""
    return _hull(np.vstack([shapely.get_coordinates(shape) for shape in shapes]))


def grown(convex: Polygon, by: float) -> Polygon:
    """Everywhere that a convex outline can be that is off by so much in any direction."""
    corners = shapely.get_coordinates(convex)[:-1]
    return _hull((corners[:, None, :] + _ROUND[None, :, :] * (by * _BULGE)).reshape(-1, 2))


def shrunk(convex: Polygon, by: float) -> Polygon:
    """What a convex outline covers wherever it is, being off by so much in any direction."""
    return shapely.buffer(convex, -by, join_style="mitre")


def without(shape: Shape, taken: Shape) -> Shape:
    """What is left of a shape."""
    return cast("Shape", shapely.difference(shape, taken))


def union(shapes: Sequence[Shape]) -> Shape:
    """All the shapes as one."""
    solid = [shape for shape in shapes if not shape.is_empty]
    if len(solid) > 1:
        return cast("Shape", shapely.union_all(solid))
    return solid[0] if solid else NOTHING


def together(one: Shape, other: Shape) -> Shape:
    """Two shapes as one."""
    return union((one, other))
