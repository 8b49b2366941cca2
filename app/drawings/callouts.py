"""Names beside a drawing, in a row above or below it, each with a line to the thing that it names."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from app.drawings.svg import TEXT, WIDTH, Point, dots, lines, width_of, words

BETWEEN = 9.0
MARGIN = 2.0
# From a name to where its line begins.
OFF = 3.0


@dataclass(frozen=True, slots=True)
class Callout:
    """A name and the place on the paper that it belongs to."""

    text: str
    target: Point


def row_of(callouts: Sequence[Callout], base: float, *, above: bool) -> list[str]:
    """The names on one base line, as near over or under their things as they go without touching."""
    ordered = sorted(callouts, key=lambda each: each.target[0])
    foot = base + OFF if above else base - TEXT
    drawn, feet = [], []
    for each, left in zip(ordered, _lefts(ordered), strict=True):
        feet.append((min(max(each.target[0], left + OFF), left + width_of(each.text) - OFF), foot))
        drawn.append(words((left, base), each.text))
    return [leaders(zip(feet, [each.target for each in ordered], strict=True)), *drawn]


def leaders(pairs: Iterable[tuple[Point, Point]]) -> str:
    """The lines from names to what they name, and the dots that they end in."""
    listed = list(pairs)
    return lines(listed, "drawing__leader") + dots([target for _, target in listed], "drawing__dot")


def _lefts(ordered: Sequence[Callout]) -> list[float]:
    """Where each name begins: pushed to the right as far as need be, then back from the edge of the paper."""
    lefts: list[float] = []
    free = MARGIN
    for each in ordered:
        left = max(each.target[0] - width_of(each.text) / 2, free)
        lefts.append(left)
        free = left + width_of(each.text) + BETWEEN
    most = WIDTH - MARGIN
    for at in reversed(range(len(lefts))):
        lefts[at] = min(lefts[at], most - width_of(ordered[at].text))
        most = lefts[at] - BETWEEN
    return lefts
