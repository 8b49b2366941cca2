"""The sheets of a paper gauge that show a torque arm, its bar down the page; a long arm takes two."""

from __future__ import annotations

import math
from collections.abc import Iterator
from typing import NamedTuple, cast

import shapely
from shapely import MultiPolygon, Polygon

from app.catalogue.dimension import plain
from app.catalogue.hub_parts import TorqueArm
from app.drawings import gauge_words as say
from app.drawings.gauge_paper import (
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
from app.drawings.svg import Point, View, outline
from app.mechanics.paper_gauge import ArmOnPaper, arm_on_paper

# The axle on the first sheet, from the corner of the paper, and how much of the bar fits below it.
AXLE_MM: Point = (151.0, 38.0)
FITS_MM = PAPER_MM[1] - AXLE_MM[1] - 4
JOIN_AT_MM = 190.0
JOIN_MM: Point = (AXLE_MM[0], 34.0)
COLUMN_MM = 106.0
LEFT_MM = 4.0
BARS_MM: Point = (LEFT_MM, 238.0)
DIAMOND_MM, CROSS_MM = 2.0, 3.0
LETTER = "A"


class Names(NamedTuple):
    """What the head of a sheet says: the arm, the axle set, and the gauge's own name."""

    arm: str
    of_what: str
    gauge: str


def arm_sheets(arm: TorqueArm, gauge: str, of_what: str) -> tuple[GaugeSheet, ...]:
    """One sheet of an arm, or two with marks to join them by. `gauge` is its name, `of_what` the axle set."""
    drawn, names = arm_on_paper(arm), Names(arm.name, of_what, gauge)
    end = drawn.keep_off.bounds[2]
    if end <= FITS_MM:
        return (_first_sheet(arm, drawn, names, joined=False),)
    return (_first_sheet(arm, drawn, names, joined=True), _second_sheet(drawn, names))


def _first_sheet(arm: TorqueArm, drawn: ArmOnPaper, names: Names, *, joined: bool) -> GaugeSheet:
    view = _downward(AXLE_MM, 0.0)
    to = JOIN_AT_MM if joined else FITS_MM
    sentences = numbered(_sentences(arm, drawn, joined=joined))
    text = text_block((LEFT_MM, 24.0), sentences, COLUMN_MM)
    parts = [
        *_shapes(drawn, view, -FITS_MM, to),
        _axle(view),
        _stay(drawn, view, to),
        *_reach(drawn, view, to),
    ]
    parts += _join(view) if joined else []
    return _sheet(names, "arm", (*parts, text), " ".join(sentences))


def _second_sheet(drawn: ArmOnPaper, names: Names) -> GaugeSheet:
    view = _downward(JOIN_MM, JOIN_AT_MM)
    to = JOIN_AT_MM + FITS_MM
    sentences = numbered((say.PRINT, say.JOIN.format(letter=LETTER)))
    text = text_block((LEFT_MM, 24.0), sentences, COLUMN_MM)
    parts = [*_shapes(drawn, view, JOIN_AT_MM, to), *_reach(drawn, view, to, JOIN_AT_MM), *_join(view)]
    return _sheet(names, "arm-end", (*parts, text), " ".join(sentences))


def _sheet(names: Names, name: str, parts: tuple[str, ...], description: str) -> GaugeSheet:
    heads = text_block((LEFT_MM, 13.0), (names.of_what, f"Gauge {names.gauge}"), COLUMN_MM)
    return GaugeSheet(
        f"gauge-{name}",
        f"Paper gauge: {names.arm}, {names.of_what}",
        f"Gauge {names.gauge}, full size. {description}",
        (title_line((LEFT_MM, 7.0), names.arm), heads, *parts, bars(BARS_MM)),
    )


def _sentences(arm: TorqueArm, drawn: ArmOnPaper, *, joined: bool) -> tuple[str, ...]:
    clamped = arm.anchor == "stay_clamp"
    from_mm, to_mm = plain(arm.outer_face_mm.low), plain(arm.inner_face_mm.high)
    return (
        say.PRINT,
        *([say.JOIN.format(letter=LETTER)] if joined else []),
        say.CUT_ARM,
        say.HOLD_ARM.format(from_mm=from_mm.replace("-", "−"), to_mm=to_mm.replace("-", "−")),
        *([say.TURN_ONTO if drawn.steps else say.TURN_BETWEEN] if clamped else []),
        say.ARM_CLEARS,
        say.ARM_TOUCHES,
        say.ANSWER_CLAMP if clamped else say.BOLTED,
    )


def _downward(origin_mm: Point, starts_at_mm: float) -> View:
    """The bar down the page, seen from the left; `starts_at_mm` along it lies at the origin."""
    x, y = (place * UNITS_PER_MM for place in origin_mm)
    return View((x, y - starts_at_mm * UNITS_PER_MM), (0, UNITS_PER_MM), (-UNITS_PER_MM, 0))


def _shapes(drawn: ArmOnPaper, view: View, from_mm: float, to_mm: float) -> Iterator[str]:
    window = shapely.box(from_mm, -PAPER_MM[0], to_mm, PAPER_MM[0])
    for shape, drawer in ((drawn.keep_off, cut_first), (drawn.outline, cut_last)):
        yield drawer(cast("Polygon | MultiPolygon", shapely.intersection(shape, window)), view)


def _axle(view: View) -> str:
    return fine([((-CROSS_MM, 0), (CROSS_MM, 0)), ((0, -CROSS_MM), (0, CROSS_MM))], view)


def _stay(drawn: ArmOnPaper, view: View, to_mm: float) -> str:
    """Along which the middle of the stay may run, from the axle as far as the clamp goes."""
    length = min(drawn.reach_mm[1], to_mm)
    angles = [math.radians(degrees) for degrees in drawn.stay_deg]
    return centre_lines(
        [((0, 0), (length * math.cos(angle), length * math.sin(angle))) for angle in angles], view
    )


def _reach(drawn: ArmOnPaper, view: View, to_mm: float, from_mm: float = 0.0) -> Iterator[str]:
    """Marks across the bar from where to where the clamp goes, and the clamp's length beside it."""
    near, far = drawn.reach_mm
    side = -drawn.keep_off.bounds[1] - 1 if far < from_mm else 19.0
    ends = [place for place in (near, far) if from_mm <= place <= to_mm]
    yield fine([((place, -side), (place, side)) for place in ends], view)
    for place in ends:
        x, y = view.at((place, side))
        yield label((x / UNITS_PER_MM - 1, y / UNITS_PER_MM), f"reach {place:g} mm", to_the_left=True)
    if from_mm <= near:
        yield from _clamp(near, near + drawn.clamp_mm, -side, view)


def _clamp(near: float, far: float, beside: float, view: View) -> Iterator[str]:
    ticks = [((place, beside - 1.5), (place, beside + 1.5)) for place in (near, far)]
    yield fine([((near, beside), (far, beside)), *ticks], view)
    x, y = view.at(((near + far) / 2, beside))
    yield label((x / UNITS_PER_MM + 1, y / UNITS_PER_MM), "clamp")
    yield label((x / UNITS_PER_MM + 1, y / UNITS_PER_MM + 4), f"{far - near:g} mm")


def _join(view: View) -> Iterator[str]:
    """A line across the bar with diamonds on it, the same on both sheets."""
    yield fine([((JOIN_AT_MM, -22), (JOIN_AT_MM, 22))], view)
    for beside in (-16.0, 0.0, 16.0):
        steps = [(DIAMOND_MM, 0), (0, DIAMOND_MM), (-DIAMOND_MM, 0), (0, -DIAMOND_MM)]
        yield outline(
            view.all([(JOIN_AT_MM + along, beside + aside) for along, aside in steps]), "gauge__fine"
        )
    x, y = view.at((JOIN_AT_MM, 22))
    yield label((x / UNITS_PER_MM - 2, y / UNITS_PER_MM + 1), LETTER, to_the_left=True)
