"""The narrowest place of the side view once more, enlarged: where a gap is too small to be judged by eye."""

from __future__ import annotations

import math
from typing import NamedTuple

import shapely
from shapely import Polygon

from app.drawings.dimension import across
from app.drawings.side_layers import layers_of, lines_of_scene
from app.drawings.side_scene import Gap, SideScene
from app.drawings.svg import TEXT, WIDTH, View, box, words

HEIGHT = 112.0
TIMES = (2, 3, 4, 5, 6, 8, 10)
# A gap is enlarged until it is this many units wide, but not so that nothing around it is seen.
WIDE_ENOUGH, LEAST_SEEN_MM = 34.0, 14.0
SEEN_WELL = 20.0
SAID = "The narrowest place, {times} times as large"
SMALLEST_MARK = 7.0
ALONG, SLANTING = "Gap along the axle: {reading}", "Slanting gap: {reading}"


class Detail(NamedTuple):
    """The elements of a detail, and where it ends on the paper."""

    parts: list[str]
    bottom: float


def detail_of(scene: SideScene, gap: Gap, view: View, *, top: float) -> Detail:
    """The detail with its gap dimensioned, and the frame in the picture that says where it is."""
    times = _times(gap, view.scale)
    middle = ((gap.start[0] + gap.end[0]) / 2, (gap.start[1] + gap.end[1]) / 2)
    centre = view.at(middle)
    head = top + TEXT + 5
    on_paper = (WIDTH / 2, head + HEIGHT / 2)
    large = _enlarged(view, times, centre, on_paper)
    frame = shapely.box(1, head, WIDTH - 1, head + HEIGHT)
    half = (max(WIDTH / 2 / times, SMALLEST_MARK), max(HEIGHT / 2 / times, SMALLEST_MARK))
    parts = [
        box(
            (centre[0] - half[0], centre[1] - half[1]),
            (centre[0] + half[0], centre[1] + half[1]),
            "drawing__spot",
        ),
        words((1, top + TEXT), SAID.format(times=times)),
        f'<g class="drawing__detail" data-scale="{large.scale:.6g}">',
        *layers_of(scene, large, frame),
        gap_in(scene, gap, large, frame),
        "</g>",
        box((1, head), (WIDTH - 1, head + HEIGHT), "drawing__frame"),
    ]
    return Detail(parts, head + HEIGHT)


def said(gap: Gap, base: float) -> str:
    """A gap that no line of the side view is as long as, in words."""
    text = (SLANTING if gap.plane > 0 else ALONG).format(reading=gap.text)
    return f'<g data-rule="{gap.rule_id}">{words((1, base), text, kind="drawing__number")}</g>'


def is_wide_enough(gap: Gap, view: View) -> bool:
    """Whether a gap can be judged in the picture itself."""
    return math.dist(gap.start, gap.end) * view.scale >= SEEN_WELL


def _times(gap: Gap, scale: float) -> int:
    """How many times larger: so that the gap is wide enough, or as much as still shows its sides."""
    wide = math.dist(gap.start, gap.end) * scale
    seen = [times for times in TIMES if HEIGHT / (scale * times) >= LEAST_SEEN_MM] or [TIMES[0]]
    return next((times for times in seen if wide * times >= WIDE_ENOUGH), seen[-1])


def _enlarged(view: View, times: int, centre: tuple[float, float], to: tuple[float, float]) -> View:
    origin = tuple(
        (at - middle) * times + place for at, middle, place in zip(view.origin, centre, to, strict=True)
    )
    return View(
        (origin[0], origin[1]),
        (view.along_x[0] * times, view.along_x[1] * times),
        (view.along_y[0] * times, view.along_y[1] * times),
    )


def gap_in(scene: SideScene, gap: Gap, view: View, frame: Polygon) -> str:
    """The dimension of a gap."""
    near = lines_of_scene(scene, view, frame)
    return across(
        view.at(gap.start), view.at(gap.end), gap.text, lines_near=near, frame=frame, of=gap.rule_id
    )
