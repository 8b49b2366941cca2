"""Whether an arm that reaches the stay clears the caliper there, and not at some other angle."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from app.facts.span import Span
from app.mechanics.arm_beside_caliper import at_each_angle
from app.mechanics.arm_outline import ArmMeasures
from app.mechanics.arm_place import Margins, Stay, margins_of
from app.mechanics.caliper_envelope import Readings
from app.mechanics.clamp import Clamp
from app.mechanics.place_beside_caliper import with_caliper
from app.rules.brake.caliper_readings import tables_of
from tests.demo import demo_standards
from tests.mechanics.stay_scenes import (
    STAYS,
    STEPPED,
    STRAIGHT,
    TURNING,
    X,
    narrower,
    read_closer,
    spans,
    stay,
)

TABLES = tables_of(demo_standards())
ARM = ArmMeasures(X(22), X(9), X(150), X(1), X(7), ())
NOTHING = Span(0, 0)
WHOLE_DEGREES = tuple(float(degrees) for degrees in range(-8, 9))
ANGLES = {TURNING: WHOLE_DEGREES, STRAIGHT: (0.0,), STEPPED: (-6.0, 0.0, 6.0, 12.0)}


def flat(nearest: Span, bearing: Span, far: Span, far_bearing: Span) -> Readings:
    return Readings("flat", "none", NOTHING, NOTHING, X("14.35"), X(19), nearest, bearing, far, far_bearing)


BESIDE_THE_BAR = flat(X(41), X(24), X(84), X(9))
READINGS = st.builds(flat, spans(25_000, 60_000), spans(0, 60_000), spans(50_000, 120_000), spans(0, 60_000))


def beside(clamp: Clamp, on: Stay, readings: Readings) -> Margins:
    bare = clamp._replace(lateral_mm=None, width_mm=None, height_mm=None)
    return with_caliper(
        margins_of(bare, on),
        arm=ARM,
        angles=ANGLES[clamp],
        readings=readings,
        tables=TABLES,
        wanted_mm=NOTHING,
    )


def test_an_arm_that_clears_the_caliper_turned_down_doesn_t_reach_a_stay_that_runs_high() -> None:
    at_some_angle = at_each_angle(ARM, WHOLE_DEGREES, BESIDE_THE_BAR, TABLES)

    on_a_low_stay = beside(TURNING, stay(offset_mm=-15), BESIDE_THE_BAR)
    on_a_high_stay = beside(TURNING, stay(offset_mm=12), BESIDE_THE_BAR)

    assert at_some_angle.low.max() > 0
    assert on_a_low_stay.together().low > 0
    assert on_a_high_stay.together().high < 0
    assert on_a_high_stay.tightest() == "caliper"


def test_the_gap_at_a_step_is_the_gap_at_that_angle() -> None:
    margins = beside(STEPPED, stay(offset_mm=30), BESIDE_THE_BAR)

    row = margins.hand.low[margins.names.index("caliper")]
    steps = margins.sure.bearing_deg.low.round(6)

    gaps = at_each_angle(ARM, ANGLES[STEPPED], BESIDE_THE_BAR, TABLES)
    for step, gap in zip(ANGLES[STEPPED], gaps.low, strict=True):
        assert set(row[steps == step]) == {gap}


def test_between_two_degrees_the_gap_is_no_better_than_at_the_better_and_no_worse_than_the_bar_moves() -> (
    None
):
    """Compares with the arm at quarter degrees, worked out one by one."""
    quarters = tuple(step / 4 for step in range(-24, 25))
    exact = at_each_angle(ARM, quarters, BESIDE_THE_BAR, TABLES)
    for offset_mm in range(-12, 13, 2):
        margins = beside(TURNING, stay(offset_mm=offset_mm), BESIDE_THE_BAR)
        row = margins.names.index("caliper")
        for at in range(0, len(margins.sure.along_mm.low), 11):
            bearing = float(margins.sure.bearing_deg.low[at])
            near = min(range(len(quarters)), key=lambda i: abs(quarters[i] - bearing))
            close_enough = 0.6
            assert margins.hand.low[row, at] <= max(exact.low[near], -1.0) + close_enough
            assert margins.hand.high[row, at] >= min(exact.high[near], 20.0) - close_enough


@given(st.sampled_from([TURNING, STRAIGHT, STEPPED]), STAYS, READINGS, st.data())
def test_a_closer_reading_of_stay_and_caliper_gives_a_margin_inside_the_wider_one(
    clamp: Clamp, wide: Stay, readings: Readings, data: st.DataObject
) -> None:
    points = (readings.nearest_mm, readings.bearing_deg, readings.far_mm, readings.far_bearing_deg)
    closer = flat(*(data.draw(narrower(span)) for span in points if span is not None))

    before = beside(clamp, wide, readings).together()
    after = beside(clamp, data.draw(read_closer(wide)), closer).together()

    assert before.holds(after)
