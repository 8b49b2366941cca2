"""The place where arm and caliper come nearest to each other, as mechanics finds them."""

from __future__ import annotations

import math
from collections.abc import Iterable
from typing import NamedTuple

import numpy as np
import shapely
import shapely.ops

from app.drawings.svg import Point
from app.mechanics.plane import DIRECTIONS, Body, Shape
from app.mechanics.prism_gap import along_axle, plane_gap, supports
from app.mechanics.ranges import Values


class Narrowest(NamedTuple):
    """The two places in the side view that are nearest, how far apart, and how far along the axle.

    plane, axial   in mm, the least that they can be; below zero where the two overlap
    """

    start: Point
    end: Point
    plane: float
    axial: float

    @property
    def gap(self) -> float:
        """The least distance of the two: slanting where they are apart in both views, else the larger."""
        if self.plane > 0 and self.axial > 0:
            return math.hypot(self.plane, self.axial)
        return max(self.plane, self.axial)


def narrowest(arm: Body, bodies: Iterable[Body]) -> Narrowest | None:
    """Where the arm comes nearest to any of the bodies; None where there are none."""
    found = [
        Narrowest(*_in_plane(arm.outer, body.outer), along_axle(arm, body).low)
        for body in bodies
        if not body.outer.is_empty
    ]
    return min(found, key=lambda each: each.gap, default=None)


def _in_plane(one: Shape, other: Shape) -> tuple[Point, Point, float]:
    """The nearest places of two outlines; of two that overlap, the shortest move that would part them."""
    apart = plane_gap(one, other)
    if apart > 0:
        start, end = shapely.ops.nearest_points(one, other)
        return (start.x, start.y), (end.x, end.y), apart
    moves = supports(one) + np.roll(supports(other), len(DIRECTIONS) // 2)
    way = DIRECTIONS[int(moves.argmin())]
    tip = _furthest(one, way)
    if shapely.covers(other, shapely.Point(tip)):
        return tip, (tip[0] + apart * way[0], tip[1] + apart * way[1]), apart
    tip = _furthest(other, -way)
    return tip, (tip[0] - apart * way[0], tip[1] - apart * way[1]), apart


def _furthest(shape: Shape, way: Values) -> Point:
    """The corner that lies furthest in a direction."""
    corners = shapely.get_coordinates(shape)
    x, y = corners[int((corners @ way).argmax())]
    return float(x), float(y)
