"""Outlines from mechanics as they come onto the paper, plain or hatched at 45° as cut metal is."""

from __future__ import annotations

import math
from collections.abc import Iterator

import numpy as np
import shapely
from numpy.typing import NDArray
from shapely.geometry import LineString, MultiLineString, MultiPolygon, Polygon
from shapely.geometry.base import BaseGeometry

from app.drawings.svg import Point, View, lines, open_path, outlines

# Between hatch lines, square to them, and how closely a curve is followed, in units.
HATCH_STEP = 5.0
FINE_ENOUGH = 0.25


def on_paper(shape: BaseGeometry, view: View) -> BaseGeometry:
    """A shape in mm as it lies on the paper, without corners that nobody could see."""
    turn = np.array((view.along_x, view.along_y))

    def placed(points: NDArray[np.float64]) -> NDArray[np.float64]:
        turned: NDArray[np.float64] = points @ turn
        return turned + view.origin

    return shapely.simplify(shapely.transform(shape, placed), FINE_ENOUGH)


def edge_of(shape: BaseGeometry, kind: str) -> str:
    """The outline of a shape that lies on the paper already."""
    rings = [ring for polygon in polygons_of(shape) for ring in (polygon.exterior, *polygon.interiors)]
    return outlines(([(x, y) for x, y in ring.coords[:-1]] for ring in rings), kind)


def lines_of(shape: BaseGeometry, kind: str) -> str:
    """Lines on the paper, bends and all."""
    return "".join(open_path([_point(at) for at in piece.coords], kind) for piece in _pieces(shape))


def hatching_of(shape: BaseGeometry, kind: str, *, falling: bool = False, step: float = HATCH_STEP) -> str:
    """Lines at 45° over a shape on the paper; neighbours are told apart by falling and rising lines."""
    cut = hatching_lines(shape, falling=falling, step=step)
    pairs = [(_point(piece.coords[0]), _point(piece.coords[-1])) for piece in _pieces(cut)]
    return lines(pairs, kind)


def hatching_lines(shape: BaseGeometry, *, falling: bool = False, step: float = HATCH_STEP) -> BaseGeometry:
    """The same lines as a shape of their own."""
    if shape.is_empty:
        return MultiLineString()
    return shapely.intersection(_lines_over(shape, falling=falling, step=step), shape)


def polygons_of(shape: BaseGeometry) -> Iterator[Polygon]:
    """The polygons that a shape is made of; points and lines among them are left out."""
    if isinstance(shape, Polygon):
        if not shape.is_empty:
            yield shape
    elif isinstance(shape, MultiPolygon) or hasattr(shape, "geoms"):
        for part in shape.geoms:
            yield from polygons_of(part)


def _lines_over(shape: BaseGeometry, *, falling: bool, step: float) -> MultiLineString:
    """Lines over the whole of a shape. They stand on a grid of the paper, so that neighbours agree."""
    left, top, right, bottom = shape.bounds
    apart = step * math.sqrt(2)
    side = -1 if falling else 1
    ends = sorted(x + side * y for x in (left, right) for y in (top, bottom))
    first, last = math.ceil(ends[0] / apart), math.floor(ends[-1] / apart)
    return MultiLineString(
        [
            ((left, side * (at * apart - left)), (right, side * (at * apart - right)))
            for at in range(first, last + 1)
        ]
    )


def _pieces(cut: BaseGeometry) -> Iterator[LineString]:
    if isinstance(cut, LineString):
        if not cut.is_empty:
            yield cut
    elif hasattr(cut, "geoms"):
        for part in cut.geoms:
            yield from _pieces(part)


def _point(coordinates: tuple[float, ...]) -> Point:
    return coordinates[0], coordinates[1]
