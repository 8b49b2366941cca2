"""Dimension lines: the line that is as long as what it measures, its arrows, and the number."""

from __future__ import annotations

import math
from collections.abc import Sequence
from xml.sax.saxutils import quoteattr

import numpy as np
import shapely
import shapely.ops
from numpy.typing import NDArray
from shapely import LineString, Polygon
from shapely.geometry.base import BaseGeometry

from app.drawings.svg import LINE, TEXT, WIDTH, Anchor, Point, line, lines, outline, width_of, words

# In units: an arrow's length and half its width, the tail of one that points in from outside.
ARROW, HALF_ARROW, TAIL = 7.0, 2.0, 12.0
# Arrows and number go between the ends of a line so long; else they stand outside.
BETWEEN_ENDS = 2.4 * ARROW
OVER, PAST = 3.5, 3.0
# Between a gap's line and its number, and how much of its size a text hangs below its middle.
CLEAR, ABOVE_BASE = 6.0, 0.36
# A number may be moved further off, and along the line, at a cost in units of line that it avoids.
SIDES = (1.0, -1.0)
FURTHER, SLIDES, COST = (0.0, 12.0, 24.0, 36.0), (0.0, -24.0, 24.0, -48.0, 48.0), 0.35


def arrow(tip: Point, towards: Point) -> str:
    """A filled arrow at `tip` that points away from `towards`."""
    (x, y), (dx, dy) = tip, _direction(towards, tip)
    foot = (x - dx * ARROW, y - dy * ARROW)
    side = (-dy * HALF_ARROW, dx * HALF_ARROW)
    return outline(
        [tip, (foot[0] + side[0], foot[1] + side[1]), (foot[0] - side[0], foot[1] - side[1])],
        "drawing__arrow",
    )


def measured_line(start: Point, end: Point) -> list[str]:
    """A line as long as what it measures, with arrows inside, or outside where it is short."""
    drawn = [line(start, end, "drawing__measured")]
    if math.dist(start, end) >= BETWEEN_ENDS:
        return [*drawn, arrow(start, end), arrow(end, start)]
    before, behind = _with_tails(start, end)
    tails = lines([(before, start), (end, behind)], "drawing__tail")
    return [*drawn, tails, arrow(start, before), arrow(end, behind)]


def along(start: Point, end: Point, text: str, *, rail: float, of: str) -> str:
    """A level dimension on a rail; from `start` and `end`, which are measured, lines lead to it."""
    left, right = sorted((start, end))
    level = (left[0], rail), (right[0], rail)
    past = PAST if rail >= left[1] else -PAST
    witness = lines([(left, (left[0], rail + past)), (right, (right[0], rail + past))], "drawing__witness")
    at, anchor = _beside_rail(left[0], right[0], text, rail)
    return _dimension(of, [witness, *measured_line(*level), number_at(at, text, anchor)])


def _beside_rail(left: float, right: float, text: str, rail: float) -> tuple[Point, Anchor]:
    """Over a rail that is long enough, else behind its arrows, or before them where the paper ends."""
    wide = width_of(text)
    if right - left >= wide + 2:
        return ((left + right) / 2, rail - OVER), "middle"
    outside = TAIL + 2 if right - left < BETWEEN_ENDS else OVER
    if right + outside + wide <= WIDTH:
        return (right + outside, rail + OVER), "start"
    return (left - outside, rail + OVER), "end"


def across(start: Point, end: Point, text: str, *, lines_near: BaseGeometry, frame: Polygon, of: str) -> str:
    """A gap in any direction, with its number near by, where the fewest lines are in its way."""
    own = LineString(_with_tails(start, end)).buffer(PAST)
    near = shapely.union(lines_near, own.boundary)
    moves = [(off, slide) for off in FURTHER for slide in SLIDES]
    places = [
        _beside(start, end, text, side * (CLEAR + off), slide) for side in SIDES for off, slide in moves
    ]
    costs = np.array([off + abs(slide) for off, slide in moves] * len(SIDES))
    best = int((_clutter(places, text, near, frame) + costs * COST).argmin())
    at, moved = places[best], bool(costs[best])
    drawn = [*measured_line(start, end), number_at(at, text, "middle")]
    return _dimension(of, [_leader(start, end, at, text), *drawn] if moved else drawn)


def _dimension(of: str, parts: list[str]) -> str:
    """A dimension that says which rule's reading it is."""
    return f'<g class="drawing__dimension" data-rule={quoteattr(of)}>{"".join(parts)}</g>'


def _leader(start: Point, end: Point, at: Point, text: str) -> str:
    """From the middle of a line to the nearest side of its number."""
    middle = _middle(start, end)
    foot = shapely.ops.nearest_points(_room(at, text), shapely.Point(middle))[0]
    return line(middle, (foot.x, foot.y), "drawing__leader")


def _beside(start: Point, end: Point, text: str, off: float, slide: float) -> Point:
    """The middle of the base line of a text so far off a line, and so far from its middle along it."""
    dx, dy = _direction(start, end)
    side = math.copysign(1.0, off)
    off += side * (abs(dy) * width_of(text) / 2 + abs(dx) * TEXT / 2)
    x, y = _middle(start, end)
    return x - dy * off + dx * slide, y + dx * off + dy * slide + TEXT * ABOVE_BASE


def _middle(start: Point, end: Point) -> Point:
    return (start[0] + end[0]) / 2, (start[1] + end[1]) / 2


def _with_tails(start: Point, end: Point) -> tuple[Point, Point]:
    dx, dy = _direction(start, end)
    return (start[0] - dx * TAIL, start[1] - dy * TAIL), (end[0] + dx * TAIL, end[1] + dy * TAIL)


def _clutter(
    places: Sequence[Point], text: str, lines_near: BaseGeometry, frame: Polygon
) -> NDArray[np.float64]:
    """How much is in the way of a text at each place: lines under it, and what of it is off the frame."""
    rooms = np.array([_room(at, text) for at in places])
    found: NDArray[np.float64] = shapely.length(shapely.intersection(rooms, lines_near))
    return found + shapely.area(shapely.difference(rooms, frame))


def _room(at: Point, text: str) -> Polygon:
    """The place that a text takes, centred over its base line."""
    half = width_of(text) / 2
    return shapely.box(at[0] - half, at[1] - TEXT, at[0] + half, at[1] + OVER)


def number_at(at: Point, text: str, anchor: Anchor) -> str:
    """The number of a dimension; a text of several lines is written downward."""
    rows = text.split("\n")
    return "".join(
        words((at[0], at[1] + LINE * row), each, anchor, "drawing__number") for row, each in enumerate(rows)
    )


def _direction(start: Point, end: Point) -> Point:
    """A step of one unit from start towards end; to the right where both are in one place."""
    far = math.dist(start, end)
    return ((end[0] - start[0]) / far, (end[1] - start[1]) / far) if far else (1.0, 0.0)
