"""The rear end from the left, to scale: stay, rotor, caliper, torque arm and clamp, with the gap between."""

from __future__ import annotations

from dataclasses import dataclass

import shapely
from shapely import Polygon
from shapely.geometry.base import BaseGeometry

from app.drawings.detail import detail_of, gap_in, is_wide_enough, said
from app.drawings.legend import legend
from app.drawings.shapes import on_paper
from app.drawings.side_layers import layers_of
from app.drawings.side_names import names_of
from app.drawings.side_scene import SideScene
from app.drawings.svg import LINE, TEXT, WIDTH, Drawing, View, box

NAME = "side-view"
TITLE = "Rear end from the left, bike facing left"
TO_SCALE = "Drawn to scale, with the caliper where it is for sure hatched and where it may reach dashed."

# In mm: what is shown at least around the axle, what is shown at most, and room around what is shown.
AROUND_AXLE, FARTHEST, ROOM = 30.0, (-120.0, -75.0, 215.0, 140.0), 7.0
LARGEST_SCALE, HIGHEST = 1.9, 250.0
# The rows of names above and below the picture.
HEAD, FOOT, BETWEEN = TEXT + 9, TEXT + 8, 4.0


@dataclass(frozen=True, slots=True)
class Window:
    """The part of the side plane that is shown, and where it lies on the paper."""

    view: View
    frame: Polygon

    @property
    def bottom(self) -> float:
        """Where the picture ends on the paper."""
        return float(self.frame.bounds[3])


def side_view(scene: SideScene) -> Drawing:
    """The side view, with its narrowest place once more and larger where there is one."""
    window = window_on(scene)
    parts = [*layers_of(scene, window.view, window.frame)]
    left, top, right, bottom = window.frame.bounds
    parts.append(box((left, top), (right, bottom), "drawing__frame"))
    parts += names_of(scene, window.view, window.frame)
    height = bottom + FOOT
    if scene.gap is not None and not scene.gap.is_in_plane:
        height += LINE
        parts.append(said(scene.gap, height))
        height += BETWEEN
    elif scene.gap is not None and is_wide_enough(scene.gap, window.view):
        parts.append(gap_in(scene, scene.gap, window.view, window.frame))
    elif scene.gap is not None:
        detail = detail_of(scene, scene.gap, window.view, top=height + BETWEEN)
        parts += detail.parts
        height = detail.bottom
    key, height = legend(height + LINE, window.view.scale, has_caliper=scene.caliper is not None)
    told = " ".join(filter(None, (TO_SCALE, scene.remark, *scene.notes)))
    return Drawing(NAME, TITLE, told, height, window.view.scale, (*parts, *key), scene.remark)


def window_on(scene: SideScene) -> Window:
    """The window that shows all that matters, as large as the paper lets it."""
    falls = scene.stay.falls_deg
    flat = View.from_left(1.0, (0.0, 0.0), falls)
    shown = [on_paper(shape, flat) for shape in scene.shapes() if not shape.is_empty]
    around = shapely.union_all([*shown, shapely.Point(0, 0).buffer(AROUND_AXLE)])
    left, top, right, bottom = shapely.intersection(around, _farthest()).buffer(ROOM).bounds
    scale = min((WIDTH - 2) / (right - left), LARGEST_SCALE, HIGHEST / (bottom - top))
    wide = (right - left) * scale
    origin = ((WIDTH - wide) / 2 - left * scale, HEAD - top * scale)
    start = (WIDTH - wide) / 2
    frame = shapely.box(start, HEAD, start + wide, HEAD + (bottom - top) * scale)
    return Window(View.from_left(scale, origin, falls), frame)


def _farthest() -> BaseGeometry:
    """As much as is ever shown; on paper the cranks lie to the left and up is negative."""
    behind, below, ahead, above = FARTHEST
    return shapely.box(-ahead, -above, -behind, -below)
