"""A reading as a span over its limits, on a ruled scale: how much of it lies inside, and what it lacks."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property

from app.drawings.ruled import Rule
from app.drawings.svg import (
    TEXT,
    WIDTH,
    Drawing,
    Point,
    box,
    group,
    kept_on_paper,
    line,
    lines,
    width_of,
    words,
)
from app.facts.span import Span
from app.report.numbers import span_text
from app.report.report import Finding, Measured

TITLE = "{title}: the reading over its limits"
READING = "The reading is {reading}."
BOTH = "The limits are {low} and {high}."
AT_LEAST, AT_MOST = "It must be {low} or more.", "It must be {high} or less."
INSIDE = "All of the reading lies inside."
OUTSIDE = "All of the reading lies outside."
ACROSS = "The reading lies across a limit."

MARGIN = 8.0
TOP, AXIS = 20.0, 56.0
BAND, HALF_BAR = (TOP + AXIS) / 2, 6.0
HEIGHT = 85.0
HATCH_STEP, MARK, FINE_MARK = 6.0, 7.0, 4.0
# Of the width that the numbers take, so much more is ruled on either side.
ROOM = 8
NARROWEST_BAR = 3.0
# Between two numbers under the scale, and between it and them.
BETWEEN, UNDER = 8.0, 9.0


@dataclass(frozen=True)
class _Layout:
    """Where the values of a finding stand on the paper."""

    measured: Measured
    unit: str

    @cached_property
    def rule(self) -> Rule:
        """The scale: reading and limits, and some room on either side."""
        ends = [end for span in self._spans() for end in span]
        room = max((max(ends) - min(ends)) // ROOM, 10 ** (3 - self.measured.places))
        return Rule.over(min(ends) - room, max(ends) + room)

    def _spans(self) -> list[tuple[int, int]]:
        given = (self.measured.reading, self.measured.low, self.measured.high)
        return [span for span in given if span is not None]

    def x(self, value: int) -> float:
        """Where a value stands."""
        share = (value - self.rule.low) / (self.rule.high - self.rule.low)
        return MARGIN + share * (WIDTH - 2 * MARGIN)

    def text(self, span: tuple[int, int]) -> str:
        """A span as the sentence of its finding names it."""
        return span_text(Span(*span), self.unit, self.measured.places)


def span_scale(finding: Finding) -> Drawing | None:
    """The scale of a finding; None where it has no numbers, or no limits to them."""
    measured = finding.measured
    if measured is None or (measured.low is None and measured.high is None):
        return None
    layout = _Layout(measured, finding.unit)
    return Drawing(
        name=finding.rule_id,
        title=TITLE.format(title=finding.title),
        description=_description(layout),
        height=HEIGHT,
        scale=(layout.x(1000) - layout.x(0)) if finding.unit == "mm" else 0.0,
        parts=(*_limits(layout), *_ruled(layout), *_reading(layout)),
    )


def _description(layout: _Layout) -> str:
    measured = layout.measured
    low = layout.text(measured.low) if measured.low else ""
    high = layout.text(measured.high) if measured.high else ""
    limits = BOTH if low and high else AT_LEAST if low else AT_MOST
    told = (READING.format(reading=layout.text(measured.reading)), limits.format(low=low, high=high))
    return " ".join((*told, _standing(measured)))


def _standing(measured: Measured) -> str:
    (least, most), low, high = measured.reading, measured.low, measured.high
    if (low and most < low[0]) or (high and least > high[1]):
        return OUTSIDE
    inside = (not low or least >= low[1]) and (not high or most <= high[0])
    return INSIDE if inside else ACROSS


def _limits(layout: _Layout) -> list[str]:
    """What is not taken, hatched, up to the limit; the inner end of a limit's tolerance is dashed."""
    drawn = []
    left, right = MARGIN, WIDTH - MARGIN
    if layout.measured.low:
        outer, inner = (layout.x(value) for value in layout.measured.low)
        drawn += [_hatched(left, outer), _edge(outer), *_tolerance(outer, inner)]
    if layout.measured.high:
        inner, outer = (layout.x(value) for value in layout.measured.high)
        drawn += [_hatched(outer, right), _edge(outer), *_tolerance(outer, inner)]
    return [group("drawing__limits", drawn)]


def _tolerance(outer: float, inner: float) -> list[str]:
    return [line((inner, TOP), (inner, AXIS), "drawing__hidden")] if outer != inner else []


def _edge(x: float) -> str:
    return line((x, TOP), (x, AXIS), "drawing__limit")


def _hatched(left: float, right: float) -> str:
    """Lines at 45° over the band from left to right."""
    height = AXIS - TOP
    pairs: list[tuple[Point, Point]] = []
    start = left - height + HATCH_STEP / 2
    while start < right:
        # Each line rises to the right; it is cut where it would leave the band.
        from_x, to_x = max(start, left), min(start + height, right)
        if from_x < to_x:
            pairs.append(((from_x, AXIS - (from_x - start)), (to_x, AXIS - (to_x - start))))
        start += HATCH_STEP
    return lines(pairs, "drawing__hatch")


def _ruled(layout: _Layout) -> list[str]:
    """The scale itself: fine marks, marks with numbers, and the limits' own numbers in their place."""
    rule, base = layout.rule, AXIS + UNDER + TEXT
    fine = [((layout.x(value), AXIS), (layout.x(value), AXIS + FINE_MARK)) for value in rule.fines()]
    drawn = [line((MARGIN, AXIS), (WIDTH - MARGIN, AXIS), "drawing__edge"), lines(fine, "drawing__fine")]
    taken = []
    for x, text in _limit_numbers(layout):
        drawn.append(words((x, base), text, "middle", "drawing__strong"))
        taken.append(_reach(x, text))
    for value, text in rule.numbers():
        x = layout.x(value)
        drawn.append(line((x, AXIS), (x, AXIS + MARK), "drawing__edge"))
        reach = _reach(x, text)
        if reach[0] >= 0 and reach[1] <= WIDTH and all(_are_apart(reach, other) for other in taken):
            drawn.append(words((x, base), text, "middle"))
            taken.append(reach)
    return drawn


def _limit_numbers(layout: _Layout) -> list[tuple[float, str]]:
    """The numbers of the limits and where they are centred: under the limit, or side by side round both."""
    measured = layout.measured
    limits = dict.fromkeys(limit for limit in (measured.low, measured.high) if limit is not None)
    found = [
        (layout.x((limit[0] + limit[1]) // 2), span_text(Span(*limit), "", measured.places))
        for limit in limits
    ]
    placed = [(kept_on_paper(x, text), text) for x, text in found]
    if len(placed) == 1 or _are_apart(_reach(*placed[0]), _reach(*placed[1])):
        return placed
    (low_x, low), (high_x, high) = found
    room = width_of(low) + BETWEEN / 2, width_of(high) + BETWEEN / 2
    middle = min(max((low_x + high_x) / 2, room[0]), WIDTH - room[1])
    return [(middle - room[0] / 2 - BETWEEN / 4, low), (middle + room[1] / 2 + BETWEEN / 4, high)]


def _reach(x: float, text: str) -> tuple[float, float]:
    return x - width_of(text) / 2, x + width_of(text) / 2


def _are_apart(one: tuple[float, float], other: tuple[float, float]) -> bool:
    return one[1] + BETWEEN <= other[0] or other[1] + BETWEEN <= one[0]


def _reading(layout: _Layout) -> list[str]:
    """The reading as a bar as long as what isn't known of it, with its words above."""
    low, high = (layout.x(value) for value in layout.measured.reading)
    text = layout.text(layout.measured.reading)
    spread = max(NARROWEST_BAR - (high - low), 0) / 2
    return [
        box((low - spread, BAND - HALF_BAR), (high + spread, BAND + HALF_BAR), "drawing__reading"),
        words((kept_on_paper((low + high) / 2, text), TOP - 6), text, "middle", "drawing__number"),
    ]
