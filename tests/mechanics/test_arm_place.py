"""Where a clamp is best put, and that a closer reading never takes back what was sure."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from app.facts.span import Span
from app.mechanics.arm_place import Stay, margins_of
from app.mechanics.clamp import Clamp
from tests.mechanics.stay_scenes import (
    CLAMPS,
    HOLED,
    STAYS,
    STEPPED,
    STRAIGHT,
    TURNING,
    X,
    exact_stays,
    read_closer,
    stay,
)

# What lies between two whole millimetres of the bar may be better by so much.
HALF_A_STEP = 500
clamps = st.sampled_from(CLAMPS)


def place_of(clamp: Clamp, on: Stay) -> Span:
    margins = margins_of(clamp, on)
    at = margins.choice()
    return Span.outward(float(margins.sure.along_mm.low[at]), float(margins.sure.along_mm.high[at]))


def test_a_clamp_goes_where_its_tightest_limit_has_most_in_hand() -> None:
    """Free from 97 to 125: the clamp of 20 mm has 4 mm on both sides of 111."""
    margins = margins_of(STRAIGHT, stay(clear_from_mm=97, clear_to_mm=125))

    assert place_of(STRAIGHT, stay(clear_from_mm=97, clear_to_mm=125)) == X(111)
    assert margins.best("free_stretch") == Span(4_000, 4_000 + HALF_A_STEP)
    assert margins.tightest() == "free_stretch"


def test_a_clamp_with_holes_goes_into_one_of_them() -> None:
    assert place_of(HOLED, stay(clear_from_mm=100, clear_to_mm=131)) == X(115)


def test_an_arm_that_turns_points_at_a_stay_above_the_axle() -> None:
    margins = margins_of(TURNING, stay(offset_mm=12, clear_from_mm=110, clear_to_mm=150))

    at = margins.choice()
    along, on_stay = margins.sure.along_mm.low[at], margins.sure.stay_mm.low[at]
    bearing = math.radians(margins.sure.bearing_deg.low[at])

    assert along * math.sin(bearing) == pytest.approx(12)
    assert along * math.cos(bearing) == pytest.approx(on_stay)


def test_an_arm_with_steps_takes_the_one_that_brings_its_clamp_to_the_stay() -> None:
    margins = margins_of(STEPPED, stay(offset_mm=33))

    chosen = margins.sure.bearing_deg.low[margins.choice()]

    assert chosen == pytest.approx(12)


def test_a_bar_at_a_step_and_its_clamp_end_on_the_stay() -> None:
    margins = margins_of(STEPPED, stay(offset_mm=20))
    aside = margins.sure.aside_mm
    assert aside is not None

    for at in range(0, len(aside.low), 17):
        angle = math.radians(margins.sure.bearing_deg.low[at])
        along, off = margins.sure.along_mm.low[at], aside.low[at]
        assert along * math.sin(angle) + off * math.cos(angle) == pytest.approx(20)
        assert along * math.cos(angle) - off * math.sin(angle) == pytest.approx(margins.sure.stay_mm.low[at])


def test_limits_that_want_different_places_don_t_meet() -> None:
    """Free only near the axle, where a turned bar would have to point up too far."""
    margins = margins_of(TURNING, stay(offset_mm=17, clear_from_mm=40, clear_to_mm=118))

    assert margins.best("free_stretch").low >= 0
    assert margins.best("swivel").low >= 0
    assert margins.together().high < 0


def test_a_limit_that_no_place_meets_is_not_counted_twice() -> None:
    too_short = stay(clear_from_mm=100, clear_to_mm=110)

    margins = margins_of(STRAIGHT, too_short)

    assert margins.best("free_stretch").high < 0
    assert margins.together().high >= 0


@given(clamps, STAYS, st.data())
def test_a_closer_reading_gives_margins_inside_the_wider_ones(
    clamp: Clamp, wide: Stay, data: st.DataObject
) -> None:
    close = data.draw(read_closer(wide))

    before, after = margins_of(clamp, wide), margins_of(clamp, close)

    assert before.together().holds(after.together())
    for name in before.names:
        assert before.best(name).holds(after.best(name))


@given(clamps, STAYS, st.data())
def test_the_margin_of_every_stay_that_was_read_lies_in_the_span(
    clamp: Clamp, wide: Stay, data: st.DataObject
) -> None:
    """Works one place of one stay out with plain numbers; nothing beats what is said to be had at best."""
    true = data.draw(exact_stays(wide))
    low, high = clamp.nearest_mm.ends[0], clamp.farthest_mm.ends[1]
    along = data.draw(
        st.sampled_from([place.ends[0] for place in clamp.places_mm])
        if clamp.places_mm
        else st.floats(low, high)
    )
    off, half = true.offset_mm.ends[0], clamp.half_length_mm.ends[0]
    if clamp.turns:
        on_stay = math.sqrt(max(along**2 - off**2, 0))
    else:
        angle = math.radians(data.draw(st.sampled_from(clamp.steps_deg)).ends[0])
        on_stay = along / math.cos(angle) - off * math.tan(angle)

    in_hand = min(on_stay - half - true.clear_from_mm.ends[0], true.clear_to_mm.ends[1] - on_stay - half)

    assert in_hand <= margins_of(clamp, wide).best("free_stretch").ends[1] + 1e-6


@given(clamps, STAYS, st.integers(0, 50_000), st.integers(0, 50_000))
def test_a_longer_free_stretch_never_loses_a_reach(clamp: Clamp, on: Stay, before: int, behind: int) -> None:
    longer = on._replace(
        clear_from_mm=on.clear_from_mm - Span(before, before),
        clear_to_mm=on.clear_to_mm + Span(behind, behind),
    )

    short, long = (margins_of(clamp, each).best("free_stretch") for each in (on, longer))

    assert long.low >= short.low
    assert long.high >= short.high


@given(STAYS)
def test_a_stay_on_the_other_side_of_the_axle_is_met_by_turning_as_far_the_other_way(on: Stay) -> None:
    mirrored = on._replace(offset_mm=-on.offset_mm)

    one, other = (margins_of(TURNING, each) for each in (on, mirrored))

    assert one.together() == other.together()
    assert [one.best(name) for name in one.names] == [other.best(name) for name in other.names]
