"""The outline of a flat part: its corners, one after the other, as it lies on the drawing."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import combinations
from typing import Annotated, TypeAlias

from pydantic import Field

from app.catalogue.dimension import Dimension
from app.facts.span import Span

Corner: TypeAlias = tuple[Dimension, Dimension]
Outline: TypeAlias = Annotated[tuple[Corner, ...], Field(max_length=60)]

FEWEST_CORNERS = 3
Place: TypeAlias = tuple[int, int]


def outline_faults(outline: Sequence[Corner]) -> Iterator[str]:
    """What is wrong with an outline that has corners at all."""
    if len(outline) < FEWEST_CORNERS:
        yield f"needs at least {FEWEST_CORNERS} corners, but has {len(outline)}"
    elif not all(along.is_exact and beside.is_exact for along, beside in outline):
        yield "must have single numbers for its corners, without a ± or a range"
    elif _crosses_itself([(along.low, beside.low) for along, beside in outline]):
        yield "must not cross itself or come back to a corner"


def within(corner: Corner, radius_mm: Span) -> bool:
    """Whether a corner is no further from the axle than this."""
    along, beside = corner
    return along.low**2 + beside.low**2 <= radius_mm.low**2


def _crosses_itself(corners: Sequence[Place]) -> bool:
    sides = list(zip(corners, (*corners[1:], corners[0]), strict=True))
    after = (*sides[1:], sides[0])
    if any(_turns_back(one, two, three) for (one, two), (_, three) in zip(sides, after, strict=True)):
        return True
    apart = [
        (one, other)
        for (first, one), (second, other) in combinations(enumerate(sides), 2)
        if 1 < second - first < len(sides) - 1
    ]
    return len(set(corners)) < len(corners) or any(_cross(*one, *other) for one, other in apart)


def _turn(one: Place, two: Place, three: Place) -> int:
    """Above zero where three places turn to the left, below where to the right, zero on a line."""
    turn = (two[0] - one[0]) * (three[1] - one[1]) - (two[1] - one[1]) * (three[0] - one[0])
    return (turn > 0) - (turn < 0)


def _between(place: Place, one: Place, two: Place) -> bool:
    """Whether a place on the line of a side lies on the side."""
    return all(min(a, b) <= at <= max(a, b) for at, a, b in zip(place, one, two, strict=True))


def _turns_back(one: Place, two: Place, three: Place) -> bool:
    """Whether the side after a corner runs back along the one before it."""
    return _turn(one, two, three) == 0 and (_between(three, one, two) or _between(one, two, three))


def _cross(one: Place, two: Place, three: Place, four: Place) -> bool:
    """Whether two sides have a place in common. Whole numbers, so that the answer is exact."""
    ends = ((three, one, two), (four, one, two), (one, three, four), (two, three, four))
    turns = [_turn(first, second, end) for end, first, second in ends]
    if turns[0] * turns[1] < 0 and turns[2] * turns[3] < 0:
        return True
    return any(
        turn == 0 and _between(end, first, second)
        for turn, (end, first, second) in zip(turns, ends, strict=True)
    )
