"""The names of what the side view shows, each with a line to a place where nothing else lies."""

from __future__ import annotations

from collections.abc import Iterator

import shapely
from shapely import Polygon
from shapely.geometry.base import BaseGeometry

from app.drawings.callouts import Callout, row_of
from app.drawings.shapes import on_paper
from app.drawings.side_scene import SideScene
from app.drawings.svg import TEXT, View

CALIPER, ARM, CLAMP, ROTOR, STAY, AXLE = "caliper", "torque arm", "clamp", "rotor", "chainstay", "axle"
# In mm: how far the stay is followed, and what the axle and the things around it take up.
FAR, AROUND_AXLE, BEGINS = 400.0, 20.0, 38.0
# In units: how far within the frame a line ends, and the room of what it keeps away from.
WITHIN, AWAY, UNDER = 5.0, 3.0, 4.0
SMOOTH = 32


def names_of(scene: SideScene, view: View, frame: Polygon) -> list[str]:
    """The rows of names over and under the picture in its frame."""
    seen = shapely.buffer(frame, -WITHIN)
    above = [*_caliper(scene, view, seen), *_rotor(scene, view, seen)]
    below = [Callout(AXLE, view.at((0, 0))), *_arm(scene, view, seen), *_stay(scene, view, seen)]
    _, top, _, bottom = frame.bounds
    return [*row_of(above, top - TEXT / 2, above=True), *row_of(below, bottom + TEXT + UNDER, above=False)]


def _caliper(scene: SideScene, view: View, seen: Polygon) -> Iterator[Callout]:
    if scene.caliper is not None:
        sure, possible = on_paper(scene.caliper.sure, view), on_paper(scene.caliper.possible, view)
        yield from _callout(CALIPER, seen, sure, possible)


def _rotor(scene: SideScene, view: View, seen: Polygon) -> Iterator[Callout]:
    """At the end of its circle that lies most to the right and above."""
    if scene.rotor_radius_mm is None:
        return
    edge = shapely.Point(0, 0).buffer(scene.rotor_radius_mm, quad_segs=SMOOTH).exterior
    open_edge = shapely.intersection(shapely.difference(on_paper(edge, view), _taken(scene, view)), seen)
    places = shapely.get_coordinates(open_edge)
    if len(places):
        x, y = max(places, key=lambda place: place[0] - place[1])
        yield Callout(ROTOR, (float(x), float(y)))


def _arm(scene: SideScene, view: View, seen: Polygon) -> Iterator[Callout]:
    if not scene.arm.is_empty:
        arm, around = on_paper(scene.arm, view), on_paper(shapely.Point(0, 0).buffer(AROUND_AXLE), view)
        others = shapely.union(around, on_paper(scene.clamp, view))
        yield from _callout(ARM, seen, shapely.difference(arm, others), arm)
    if not scene.clamp.is_empty:
        yield from _callout(CLAMP, seen, on_paper(scene.clamp, view))


def _stay(scene: SideScene, view: View, seen: Polygon) -> Iterator[Callout]:
    stay = on_paper(scene.stay.stretch(BEGINS, FAR), view)
    yield from _callout(STAY, seen, shapely.difference(stay, _taken(scene, view)), stay)


def _taken(scene: SideScene, view: View) -> BaseGeometry:
    """What lies before stay and rotor, on paper, with some room."""
    return shapely.buffer(shapely.union_all([on_paper(shape, view) for shape in scene.shapes()]), AWAY)


def _callout(text: str, seen: Polygon, *shapes: BaseGeometry) -> Iterator[Callout]:
    """One at a place well inside the first of these shapes that is seen."""
    for shape in shapes:
        part = shapely.intersection(shape, seen)
        pieces = [each for each in shapely.get_parts(part) if each.area > 0]
        if pieces:
            middle = shapely.maximum_inscribed_circle(max(pieces, key=lambda each: each.area), 1.0)
            yield Callout(text, (middle.coords[0][0], middle.coords[0][1]))
            return
