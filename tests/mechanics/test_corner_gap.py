"""How far two rings round the axle are apart, across it and along it."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st
from shapely import box

from app.facts.span import Span
from app.mechanics.corner_gap import corner_gap

places = st.integers(0, 90)


@pytest.mark.parametrize(
    ("across_mm", "along_mm", "gap_mm"),
    [
        pytest.param(3, 4, 5, id="apart in both: the slanting way"),
        pytest.param(3, -4, 3, id="apart across the axle alone"),
        pytest.param(-3, 4, 4, id="apart along the axle alone"),
        pytest.param(-3, -1, -1, id="overlapping: the shorter way out"),
        pytest.param(0, -2, 0, id="touching"),
    ],
)
def test_the_gap_of_two_rings(across_mm: int, along_mm: int, gap_mm: int) -> None:
    gap = corner_gap(across_mm=Span.exactly(across_mm), along_mm=Span.exactly(along_mm))

    assert gap == Span.exactly(gap_mm)


@given(places, places, st.integers(1, 9), st.integers(1, 9))
def test_rings_that_are_apart_are_as_far_apart_as_their_sections_drawn_on_paper(
    radius: int, face: int, width: int, height: int
) -> None:
    """The outer ring lies above a radius of 50 and left of 40; the other one below and right of its own."""
    outer = box(0, 50, 40, 100)
    inner = box(face, radius - height, face + width, radius)

    gap = corner_gap(across_mm=Span.exactly(50 - radius), along_mm=Span.exactly(face - 40))

    apart = outer.distance(inner)
    assert (gap.high > 0) is (apart > 0)
    assert apart == 0 or abs(gap.ends[0] - apart) <= 0.001


@given(*[st.tuples(st.integers(-9000, 9000), st.integers(0, 5000), st.integers(0, 5000))] * 2)
def test_a_closer_reading_of_both_ways_gives_a_gap_within_the_old_one(
    across: tuple[int, int, int], along: tuple[int, int, int]
) -> None:
    wide = [Span(at - before, at + after) for at, before, after in (across, along)]
    close = [Span(at, at) for at, _, _ in (across, along)]

    assert corner_gap(across_mm=wide[0], along_mm=wide[1]).holds(
        corner_gap(across_mm=close[0], along_mm=close[1])
    )
