"""The layers of the side view, from the back to the front, cut off at a frame."""

from __future__ import annotations

from collections.abc import Iterator

import shapely
from shapely import LineString, Polygon
from shapely.geometry.base import BaseGeometry

from app.drawings.shapes import edge_of, hatching_lines, hatching_of, lines_of, on_paper
from app.drawings.side_scene import Caliper, SideScene, Stay
from app.drawings.svg import Point, View, lines
from app.mechanics.plane import NOTHING, at

# In mm. No fact tells how the seatstay rises; the plate joins both stays round the axle.
SEATSTAY_DEG, SEATSTAY_HALF = 64.0, 7.0
FAR, PLATE_RADIUS, PLATE_END = 400.0, 16.0, 34.0
AXLE_RADIUS, CROSS = 5.0, 9.0
SMOOTH = 32
FREE_MARK = 4.0
DENSE = 2.6
# In units: half the size of the cross at a measured point.
ARMS = 3.5


def layers_of(scene: SideScene, view: View, frame: Polygon) -> Iterator[str]:
    """Everything but words and dimensions, as elements."""
    if scene.rotor_radius_mm is not None:
        yield _line(_circle(scene.rotor_radius_mm).exterior, view, frame, "drawing__rotor")
    yield from _frame_of_bike(scene.stay, view, frame)
    yield _filled(scene.arm, view, frame, "drawing__arm")
    yield _filled(scene.clamp, view, frame, "drawing__clamp")
    if scene.caliper is not None:
        yield from _caliper(scene.caliper, view, frame)
        if scene.gap is not None and scene.gap.overlap:
            both = _cut(shapely.intersection(scene.caliper.possible, scene.arm), view, frame)
            yield hatching_of(both, "drawing__overlap", falling=True, step=DENSE)
    yield _filled(_circle(AXLE_RADIUS), view, frame, "drawing__part")
    for start, end in (((-CROSS, 0), (CROSS, 0)), ((0, -CROSS), (0, CROSS))):
        yield _line(LineString([start, end]), view, frame, "drawing__centre")


def lines_of_scene(scene: SideScene, view: View, frame: Polygon) -> BaseGeometry:
    """The lines that a number had better not stand on."""
    seen = (*scene.shapes(), scene.stay.stretch(PLATE_END, FAR), _plate(scene.stay))
    shapes = [_cut(shape, view, frame) for shape in seen]
    hatched = _cut(scene.caliper.sure, view, frame) if scene.caliper is not None else NOTHING
    return shapely.union_all([hatching_lines(hatched), *[shapely.boundary(shape) for shape in shapes]])


def _frame_of_bike(stay: Stay, view: View, frame: Polygon) -> Iterator[str]:
    """Both stays and the plate between them; the seatstay is dashed, for nobody measured how it rises."""
    tip = at(FAR, SEATSTAY_DEG)
    seatstay = LineString([(0, 0), tip]).buffer(SEATSTAY_HALF, cap_style="flat")
    plate = _plate(stay)
    yield _filled(shapely.difference(seatstay, plate), view, frame, "drawing__hidden")
    yield _filled(stay.stretch(PLATE_END / 2, FAR), view, frame, "drawing__part")
    yield _filled(plate, view, frame, "drawing__part")
    if stay.free_mm is not None:
        for place in stay.free_mm:
            low, high = stay.offset_mm - stay.half_height_mm, stay.offset_mm + stay.half_height_mm
            mark = LineString([(place, low - FREE_MARK), (place, high + FREE_MARK)])
            yield _line(mark, view, frame, "drawing__mark")


def _plate(stay: Stay) -> BaseGeometry:
    """The dropout: around the axle, and out to both stays."""
    ends = (stay.stretch(PLATE_END - 1, PLATE_END), _circle(SEATSTAY_HALF, *at(PLATE_END, SEATSTAY_DEG)))
    return shapely.union_all([shapely.union(_circle(PLATE_RADIUS), end).convex_hull for end in ends])


def _caliper(caliper: Caliper, view: View, frame: Polygon) -> Iterator[str]:
    yield edge_of(_cut(caliper.possible, view, frame), "drawing__hidden")
    sure = _cut(caliper.sure, view, frame)
    yield hatching_of(sure, "drawing__hatch")
    yield edge_of(sure, "drawing__edge")
    crosses = [
        pair
        for x, y in map(view.at, caliper.measured)
        if frame.contains(shapely.Point(x, y))
        for pair in _cross(x, y)
    ]
    yield lines(crosses, "drawing__spotted")


def _cross(x: float, y: float) -> tuple[tuple[Point, Point], tuple[Point, Point]]:
    return ((x - ARMS, y - ARMS), (x + ARMS, y + ARMS)), ((x - ARMS, y + ARMS), (x + ARMS, y - ARMS))


def _filled(shape: BaseGeometry, view: View, frame: Polygon, kind: str) -> str:
    return edge_of(_cut(shape, view, frame), kind)


def _line(line: BaseGeometry, view: View, frame: Polygon, kind: str) -> str:
    return lines_of(_cut(line, view, frame), kind)


def _cut(shape: BaseGeometry, view: View, frame: Polygon) -> BaseGeometry:
    return shapely.intersection(on_paper(shape, view), frame)


def _circle(radius: float, x: float = 0.0, y: float = 0.0) -> Polygon:
    return shapely.Point(x, y).buffer(radius, quad_segs=SMOOTH)
