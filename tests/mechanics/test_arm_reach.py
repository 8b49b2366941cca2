"""How a clamp meets the stay, limit by limit."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from app.facts.span import Exact, Span
from app.mechanics.arm_reach import (
    bar_bearing,
    clamp_lever,
    free_within_reach,
    stay_beside_clamp,
    stretch_in_reach,
)
from app.mechanics.clamp import Clamp
from tests.mechanics.stay_scenes import CLAMPS, HOLED, STEPPED, STRAIGHT, TURNING, X, narrower, spans

OFFSETS = spans(-30_000, 60_000)
clamps = st.sampled_from(CLAMPS)
LIMITS = (X(-8), X(8))


def stretch(clear_from_mm: Span, clear_to_mm: Span) -> Span:
    return stretch_in_reach(
        clear_from_mm=clear_from_mm, clear_to_mm=clear_to_mm, reach_from_mm=X(90), reach_to_mm=X(150)
    )


def free(clamp: Clamp, begins: Exact, ends: Exact, offset: Exact = 0) -> Span:
    return free_within_reach(clamp, clear_from_mm=X(begins), clear_to_mm=X(ends), offset_mm=X(offset))


def test_a_stay_that_is_free_all_along_gives_the_whole_reach() -> None:
    assert stretch(X(40), X(300)) == X(60)


def test_a_caliper_on_the_stay_takes_the_near_part() -> None:
    assert stretch(Span.around(120, 1), X(300)) == Span.around(30, 1)


def test_a_boss_within_the_reach_takes_the_far_part() -> None:
    assert stretch(X(40), X(118)) == X(28)


def test_a_stay_that_is_free_only_beyond_the_reach_falls_short() -> None:
    assert stretch(X(170), X(300)) == X(-20)


def test_an_arm_that_turns_reaches_less_far_along_a_stay_above_the_axle() -> None:
    reaches_to = math.sqrt(150**2 - 20**2)

    assert free(TURNING, 120, 300, offset=20).ends[1] == pytest.approx(reaches_to - 120, abs=0.002)


def test_a_clamp_with_holes_has_what_is_free_around_its_best_hole() -> None:
    """Holes at 102, 115 and 128: free from 106 to 121, the middle one has 6 mm on its far side."""
    assert free(HOLED, 106, 121) == X(12)


def test_an_arm_with_steps_has_as_much_as_at_its_best_step() -> None:
    assert free(STEPPED, 40, 300, offset=20).ends[0] >= 60


@pytest.mark.parametrize(
    ("offset_mm", "bearing_deg"),
    [
        pytest.param(0, 0, id="a stay through the axle"),
        pytest.param(14, math.degrees(math.asin(14 / 140)), id="from as far out as the clamp goes"),
        pytest.param(-14, -math.degrees(math.asin(14 / 140)), id="a stay below the axle"),
    ],
)
def test_the_bar_points_at_the_stay_from_where_that_is_easiest(offset_mm: int, bearing_deg: float) -> None:
    low, high = bar_bearing(TURNING, LIMITS, X(offset_mm)).ends

    assert low - 0.001 <= bearing_deg <= high + 0.001


def test_an_arm_that_can_only_point_up_is_clamped_near_the_axle() -> None:
    low, _ = bar_bearing(TURNING, (X(8), X(20)), X(12)).ends

    assert low == pytest.approx(math.degrees(math.asin(12 / 100)), abs=0.002)


def beside(lateral: Span, inward: Span) -> Span:
    return stay_beside_clamp(
        TURNING, (X(-3), X(17)), lateral_mm=lateral, inward_per_mm=inward, read_at_mm=X(100)
    )


def test_a_stay_too_far_out_is_met_further_on_where_it_has_come_nearer() -> None:
    """At 140 mm, 40 further than it was read, a stay with 0.06 mm for each is 2.4 mm further in."""
    assert beside(X(-5), X("0.06")) == X("-2.6")


def test_a_stay_that_is_far_enough_in_is_met_where_it_suits_best() -> None:
    assert beside(X(6), X("0.06")).ends[0] == pytest.approx(7, abs=1.5)


@given(spans(-20_000, 40_000), spans(0, 150), st.data())
def test_a_closer_reading_of_the_side_lies_inside_the_wider_one(
    lateral: Span, inward: Span, data: st.DataObject
) -> None:
    closer = beside(data.draw(narrower(lateral)), data.draw(narrower(inward)))

    assert beside(lateral, inward).holds(closer)


@given(clamps, spans(0, 200_000), spans(50_000, 400_000), OFFSETS, st.data())
def test_a_closer_reading_of_the_stretch_lies_inside_the_wider_one(
    clamp: Clamp, begins: Span, ends: Span, offset: Span, data: st.DataObject
) -> None:
    wide = free_within_reach(clamp, clear_from_mm=begins, clear_to_mm=ends, offset_mm=offset)

    close = free_within_reach(
        clamp,
        clear_from_mm=data.draw(narrower(begins)),
        clear_to_mm=data.draw(narrower(ends)),
        offset_mm=data.draw(narrower(offset)),
    )

    assert wide.holds(close)


@given(clamps, spans(0, 200_000), spans(50_000, 400_000), OFFSETS, st.integers(0, 50_000))
def test_a_longer_free_stretch_never_loses_a_reach(
    clamp: Clamp, begins: Span, ends: Span, offset: Span, more: int
) -> None:
    short = free_within_reach(clamp, clear_from_mm=begins, clear_to_mm=ends, offset_mm=offset)

    longer = free_within_reach(
        clamp, clear_from_mm=begins, clear_to_mm=ends + Span(more, more), offset_mm=offset
    )

    assert longer.low >= short.low
    assert longer.high >= short.high


def test_the_lever_ends_where_the_stay_is_free_for_the_whole_clamp() -> None:
    assert clamp_lever(STRAIGHT, X(131)) == X(121)


def test_the_lever_is_never_shorter_than_the_arm_nor_longer() -> None:
    assert clamp_lever(STRAIGHT, Span.between(0, 1000)) == Span.between(100, 140)


def test_the_lever_of_a_clamp_with_holes_is_the_farthest_that_is_free() -> None:
    assert clamp_lever(HOLED, X(126)) == X(115)
    assert clamp_lever(HOLED, Span.between(124, 126)) == Span.between(102, 115)


@given(clamps, spans(0, 400_000), st.data())
def test_a_closer_reading_of_the_free_end_lies_inside_the_wider_lever(
    clamp: Clamp, clear_to: Span, data: st.DataObject
) -> None:
    assert clamp_lever(clamp, clear_to).holds(clamp_lever(clamp, data.draw(narrower(clear_to))))
