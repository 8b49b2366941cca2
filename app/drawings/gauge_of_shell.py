"""The sheet of a paper gauge that shows the edge of a motor's shell, and a strip for its place."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from typing import cast

import shapely
from shapely import MultiPolygon, Polygon

from app.catalogue.hub_parts import AxleSet, Hub
from app.drawings import gauge_words as say
from app.drawings.gauge_paper import (
    ORIGIN,
    PAPER_MM,
    UNITS_PER_MM,
    GaugeSheet,
    bars,
    centre_lines,
    cut_first,
    cut_last,
    fine,
    label,
    numbered,
    text_block,
    title_line,
)
from app.drawings.svg import Point, View, lines
from app.mechanics.paper_gauge import ShellOnPaper, shell_on_paper

AXLE_MM: Point = (183.0, 150.0)
# The quarter has its straight edge along the stay and goes a little past the upright.
QUARTER_DEG = range(101)
CROSS_MM, MARGIN_MM = 5.0, 3.0
LEFT_MM, COLUMN_MM = 4.0, 182.0
STRIP_MM: Point = (LEFT_MM, 158.0)
STRIP_WIDE_MM, TAB_MM, STRIP_END_MM = 14.0, 20.0, 8.0
BARS_MM: Point = (LEFT_MM, 240.0)
SENTENCES = (say.PRINT, say.CUT_SHELL, say.HOLD_SHELL, say.HOLD_STRIP, say.SHELL_CLEARS, say.SHELL_TOUCHES)


def shell_sheet(hub: Hub, axle_set: AxleSet, gauge: str, of_what: str) -> GaugeSheet:
    """The quarter of the shell, the strip, and how both are held; in words alone where no size is given."""
    drawn = shell_on_paper(hub, axle_set)
    if drawn is None:
        sentences: tuple[str, ...] = (say.NO_SHELL,)
        shapes: tuple[str, ...] = ()
    else:
        sentences = numbered(SENTENCES)
        shapes = (*_quarter(drawn), *_strip(drawn))
    text = text_block((LEFT_MM, 181.0), sentences, COLUMN_MM)
    heads = text_block((LEFT_MM, 13.0), (of_what, f"Gauge {gauge}"), COLUMN_MM / 2)
    return GaugeSheet(
        "gauge-shell",
        f"Paper gauge: motor shell of {hub.name}, {of_what}",
        f"Gauge {gauge}, full size. {' '.join(sentences)}",
        (*shapes, title_line((LEFT_MM, 7.0), f"Motor shell, {hub.name}"), heads, text, bars(BARS_MM)),
    )


def _quarter(drawn: ShellOnPaper) -> Iterator[str]:
    x, y = (place * UNITS_PER_MM for place in AXLE_MM)
    view = View((x, y), (-UNITS_PER_MM, 0), (0, -UNITS_PER_MM))
    yield cut_first(_on_paper(drawn.keep_off_mm, MARGIN_MM), view)
    yield cut_last(_on_paper(drawn.radius_mm, 0.0), view)
    yield fine([((0, 0), (CROSS_MM, 0)), ((0, 0), (0, CROSS_MM))], view)
    yield centre_lines([((0, 0), (drawn.radius_mm, 0))], view)
    yield label((AXLE_MM[0] - 30, AXLE_MM[1] - 3), "left chainstay, towards the cranks", to_the_left=True)


def _on_paper(radius: float, below: float) -> Polygon | MultiPolygon:
    """A quarter of a disc, as far as the paper goes."""
    arc = [math.radians(degrees) for degrees in QUARTER_DEG]
    rim = [(radius * math.cos(angle), radius * math.sin(angle)) for angle in arc]
    foot = [(0.0, -below), (radius, -below)] if below else []
    window = shapely.box(AXLE_MM[0] - PAPER_MM[0] + 1, -below, AXLE_MM[0] - LEFT_MM, AXLE_MM[1] - LEFT_MM)
    quarter = Polygon([(0.0, 0.0), *foot, *rim])
    return cast("Polygon | MultiPolygon", shapely.intersection(quarter, window))


def _strip(drawn: ShellOnPaper) -> Iterator[str]:
    """A strip that starts with a tab; from the fold on it is as long as things lie inboard."""
    x, y = STRIP_MM
    fold, below = x + TAB_MM, y + STRIP_WIDE_MM
    places = (fold + drawn.keep_before_mm, fold + drawn.face_mm)
    yield cut_first(shapely.box(x, y, places[1] + STRIP_END_MM, below), ORIGIN)
    yield _across([fold], "4 8")
    yield _across([places[0]], "24 12")
    yield _across([places[1]], "none")
    yield label((x + 2, y + STRIP_WIDE_MM / 2 + 1), "tab")
    yield label((fold + 2, y + STRIP_WIDE_MM / 2 + 1), "inboard")


def _across(places: Sequence[float], dashes: str) -> str:
    y, below = STRIP_MM[1], STRIP_MM[1] + STRIP_WIDE_MM
    pairs = [(ORIGIN.at((x, y)), ORIGIN.at((x, below))) for x in places]
    return f'<g stroke-dasharray="{dashes}">{lines(pairs, "gauge__mark")}</g>'
