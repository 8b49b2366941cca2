"""Where the middle of the cogs stands, and how far a chain may run off straight."""

from __future__ import annotations

from app.facts.span import Span
from app.mechanics.cassette import between_outermost_cogs, stack_of
from app.mechanics.chain_run import middle_of_cogs, middle_of_freewheel, off_straight_mm, rear_chainline_mm
from tests.demo import demo_standards

PITCHES = demo_standards().cog_pitches


def test_fewer_cogs_on_splines_end_at_the_same_place_and_have_their_middle_further_out() -> None:
    nine, ten = (
        middle_of_cogs(smallest_cog_face_mm=Span.exactly(44), stack_mm=stack_of(Span.exactly(count), PITCHES))
        for count in (9, 10)
    )

    assert nine.low > ten.high


def test_fewer_cogs_on_a_thread_begin_at_the_same_place_and_have_their_middle_further_in() -> None:
    six, seven = (
        middle_of_freewheel(
            largest_cog_face_mm=Span.exactly(5), stack_mm=stack_of(Span.exactly(count), PITCHES)
        )
        for count in (6, 7)
    )

    assert six.high < seven.low


def test_a_washer_moved_from_right_to_left_moves_the_line_inboard_by_its_thickness() -> None:
    before, after = (
        rear_chainline_mm(
            over_locknut_mm=Span.exactly(135), right_mm=Span.exactly(right), middle_mm=Span.exactly(26)
        )
        for right in ("47", "48")
    )

    assert after == before - Span.exactly(1)


def test_eleven_cogs_may_be_of_a_road_or_of_a_mountain_cassette() -> None:
    assert stack_of(Span.exactly(11), PITCHES) == Span.between("38.5", "40.6")


def test_from_end_cog_to_end_cog_there_is_one_pitch_less_than_there_are_cogs() -> None:
    assert between_outermost_cogs(Span.exactly(10), PITCHES) == Span.exactly("35.55")


def test_a_longer_chainstay_takes_a_chain_further_off_straight() -> None:
    short, long = (
        off_straight_mm(angle_deg=Span.exactly(3), chainstay_mm=Span.exactly(length)) for length in (405, 465)
    )

    assert short.high < long.low
    assert short == Span.between("21.2", "21.3")
