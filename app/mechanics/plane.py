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
# A swept shape is made of steps of one degree, unless the reading is wider than this.
WIDE_DEG = 30
HALF_A_STEP_DEG = 0.5
FLATTER = math.cos(math.radians(HALF_A_STEP_DEG))
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


def _grid(low_deg: float, high_deg: float) -> range | None:
    """The whole degrees around both ends; None where they are many, and nothing much is known."""
    first, last = math.floor(low_deg), math.ceil(high_deg)
    return range(first, max(last, first + 1) + 1) if last - first <= WIDE_DEG else None


def _cell(points: Points, first_deg: float) -> Polygon:
    """All places of a convex outline that turns by one degree.

    A point's arc lies in the triangle of its chord and the tangents at both ends, so the middle position is
    drawn larger until it reaches the place where the tangents meet.
    """
    places = [
        points @ _turning(first_deg),
        points @ _turning(first_deg + HALF_A_STEP_DEG, 1 / FLATTER),
        points @ _turning(first_deg + 1),
    ]
    return _hull(np.vstack(places))


def _hull(points: Points) -> Polygon:
    return cast("Polygon", shapely.convex_hull(LineString(points)))


def swept(convex: Polygon, low_deg: float, high_deg: float) -> Shape:
    """Everywhere that a convex outline can be, turned about the axle by an angle from low to high.

    Where the angle is hardly known that is the whole disc as far as the outline reaches.
    """
    grid, points = _grid(low_deg, high_deg), shapely.get_coordinates(convex)
    if grid is None:
        return round_outside((0, 0), float(np.hypot(*points.T).max()) / FLATTER)
    return union([_cell(points, first) for first in grid[:-1]])


def kept(convex: Polygon, low_deg: float, high_deg: float) -> Polygon:
    """What a convex outline covers whatever the angle, from low to high, by which it is turned."""
    grid = _grid(low_deg, high_deg)
    if grid is None or convex.is_empty:
        return NOTHING
    shapes = [turned(convex, degrees) for degrees in grid]
    shapes += [turned(convex, degrees + HALF_A_STEP_DEG, FLATTER) for degrees in grid[:-1]]
    common = shapely.intersection_all(shapes)
    return common if isinstance(common, Polygon) else NOTHING


def spot(distance: Axial, bearing_deg: Axial) -> Spot:
    """The same point as a disc around the middle of both readings."""
    half_turn = math.radians(bearing_deg[1] - bearing_deg[0]) / 2
    off = (distance[1] - distance[0]) / 2 + distance[1] * half_turn
    return Spot(at(sum(distance) / 2, sum(bearing_deg) / 2), off)


def sector(distance: Axial, bearing_deg: Axial) -> Shape:
    """All places of a point known by its distance from the axle and its bearing; a ring if hardly by that."""
    near, far = distance
    grid = _grid(*bearing_deg)
    if grid is None:
        return without(round_outside((0, 0), far / FLATTER), round_inside((0, 0), near * FLATTER))
    return union([_sector(near, far, first) for first in grid[:-1]])


def _sector(near: float, far: float, first_deg: float) -> Polygon:
    """One degree of a ring."""
    ends = [at(distance, first_deg + step) for distance in (near, far) for step in (0, 1)]
    return _hull(np.array([*ends, at(far / FLATTER, first_deg + HALF_A_STEP_DEG)]))


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
