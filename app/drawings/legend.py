"""What the lines of a drawing mean, and a bar to see its scale by, on one row under it."""

from __future__ import annotations

from shapely import box as polygon

from app.drawings.shapes import hatching_of
from app.drawings.svg import TEXT, WIDTH, box, line, lines, width_of, words

SURE, POSSIBLE, BAR = "caliper", "may reach", "{length} mm"
SAMPLE, HIGH, GAP = 15.0, 10.0, 5.0
LENGTHS_MM = (100, 50, 20, 10)
LONGEST, TICK = 46.0, 4.0


def legend(base: float, scale: float, *, has_caliper: bool) -> tuple[list[str], float]:
    """The row with its base line there, and where the paper may end below it."""
    drawn: list[str] = []
    if has_caliper:
        sure = polygon(1, base - HIGH, 1 + SAMPLE, base)
        drawn += [
            hatching_of(sure, "drawing__hatch"),
            box((1, base - HIGH), (1 + SAMPLE, base), "drawing__edge"),
            words((1 + SAMPLE + GAP, base), SURE),
        ]
        left = 1 + SAMPLE + 2 * GAP + width_of(SURE) + GAP
        drawn += [
            box((left, base - HIGH), (left + SAMPLE, base), "drawing__hidden"),
            words((left + SAMPLE + GAP, base), POSSIBLE),
        ]
    return [*drawn, *_bar(base, scale)], base + TEXT / 2


def _bar(base: float, scale: float) -> list[str]:
    length = next((mm for mm in LENGTHS_MM if mm * scale <= LONGEST), LENGTHS_MM[-1])
    text = BAR.format(length=length)
    right = WIDTH - 2
    left = right - length * scale
    y = base - HIGH / 2
    ticks = [((x, y - TICK), (x, y + TICK)) for x in (left, right)]
    return [
        line((left, y), (right, y), "drawing__bar"),
        lines(ticks, "drawing__bar"),
        words((left - GAP, base), text, "end"),
    ]
