"""An arm beside a caliper, at the angle that clears best."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from app.catalogue.hub_parts import TorqueArm
from app.facts.span import Span
from app.mechanics.arm_beside_caliper import at_each_angle, clearance, spare
from app.mechanics.arm_outline import ArmMeasures, arm_body, index_angles, measures_of
from app.mechanics.caliper_envelope import Readings, caliper
from app.mechanics.prism_gap import room_between
from tests.demo import demo_catalogue
from tests.mechanics.scenes import TABLES, calipers, closer, measured, readings

ARMS = demo_catalogue().torque_arms
arms = st.sampled_from(ARMS)
STRAIGHT = ArmMeasures(
    disc_radius_mm=Span.exactly(22),
    bar_half_width_mm=Span.exactly(9),
    reach_to_mm=Span.exactly(150),
    outer_face_mm=Span.exactly(1),
    inner_face_mm=Span.exactly(7),
    outline=(),
)
# Discs that reach as far as the bolts of every mount, so that verdicts of all kinds are met.
LARGE_DISCS = st.integers(20, 56).map(lambda radius: STRAIGHT._replace(disc_radius_mm=Span.exactly(radius)))
TURNING = st.sampled_from(
    [(0.0,), (-6.0, 0.0, 6.0, 12.0), tuple(float(degrees) for degrees in range(-9, 10))]
)
ROUNDED_MM = 0.05
TURNS = st.integers(-60, 60)


def turned(wide: Readings, degrees: int) -> Readings:
    """The same caliper, everything around the axle turned by whole degrees."""
    names = ("line_deg", "bearing_deg", "far_bearing_deg")
    by = Span.exactly(degrees)
    return wide._replace(**{name: getattr(wide, name) + by for name in names})


@given(arms, calipers())
def test_all_angles_at_once_give_what_each_gives_by_itself(arm: TorqueArm, wide: Readings) -> None:
    measures, angles = measures_of(arm), index_angles(arm)
    found = at_each_angle(measures, angles, wide, TABLES)
    bodies = caliper(wide, TABLES).bodies

    for at, angle in enumerate(angles[::7]):
        alone = [room_between(arm_body(measures, angle), body) for body in bodies]
        least, most = (min(ends) for ends in zip(*alone, strict=True))
        if least > 0:
            assert found.low[at * 7] == pytest.approx(least, abs=ROUNDED_MM)
        else:
            assert found.low[at * 7] <= ROUNDED_MM
        assert found.high[at * 7] >= min(most, 20) - ROUNDED_MM


@given(st.one_of(arms.map(measures_of), LARGE_DISCS), TURNING, calipers(), st.data())
def test_a_closer_reading_never_turns_a_verdict(
    arm: ArmMeasures, angles: tuple[float, ...], wide: Readings, data: st.DataObject
) -> None:
    before, after = (clearance(arm, angles, each, TABLES).gap_mm for each in (wide, data.draw(closer(wide))))

    for wanted in (0, 500, 2500):
        assert not (before.low >= wanted > after.low)
        assert not (before.high < wanted <= after.high)


@given(TURNS)
def test_turning_the_whole_scene_changes_nothing(degrees: int) -> None:
    before = clearance(STRAIGHT, (0.0,), measured("post"), TABLES)
    after = clearance(STRAIGHT, (float(degrees),), turned(measured("post"), degrees), TABLES)

    assert after.gap_mm.ends == pytest.approx(before.gap_mm.ends, abs=ROUNDED_MM)


def test_an_arm_that_turns_clears_at_least_as_well_as_one_that_does_not() -> None:
    low = readings("is", rotor_mm=Span.exactly(160), line_deg=Span.around(-18, 1))

    fixed = clearance(STRAIGHT, (0.0,), low, TABLES)
    free = clearance(STRAIGHT, tuple(np.arange(-10.0, 11.0)), low, TABLES)

    assert fixed.gap_mm.low < 0 < free.gap_mm.low
    assert free.index_deg < 0


def test_a_caliper_measured_inside_the_bar_overlaps_by_as_much_as_it_is_inside() -> None:
    inside = measured("flat", nearest_mm=Span.exactly(60), bearing_deg=Span.exactly(0))
    found = clearance(STRAIGHT, (0.0,), inside, TABLES)

    # 9 mm to either side of the bar; along the axle arm and caliper share far more.
    assert found.gap_mm.ends[1] == pytest.approx(-9, abs=ROUNDED_MM)


def test_an_arm_outside_the_dropout_is_apart_along_the_axle() -> None:
    outside = STRAIGHT._replace(outer_face_mm=Span.exactly(-13), inner_face_mm=Span.exactly(-8))
    inside = measured("flat", nearest_mm=Span.exactly(60), bearing_deg=Span.exactly(0))
    found = clearance(outside, (0.0,), inside, TABLES)

    # Rotor 13.9 to 14.9, depth 18.5 to 19.5: the caliper begins between -5.6 and -3.6.
    assert found.axial_mm.ends == pytest.approx((2.4, 4.4))


def test_practice_counts_the_view_with_more_room_beyond_what_it_wants() -> None:
    assert spare(np.array([3.0, -5.0, 1.0]), 2.5).tolist() == [1.5, 1.5, 1.5]
    assert spare(np.array([3.0, -5.0, 1.0]), -4.0).tolist() == [1.0, -5.0, -1.0]
