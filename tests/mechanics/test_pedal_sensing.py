"""Pulses in a turn of the crank, and how far it turns until they are seen."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from app.facts.span import Span
from app.mechanics.pedal_sensing import crank_angle_deg, per_crank_turn

teeth = st.integers(9, 60)


def test_a_granny_gear_gives_fewer_pulses_than_a_road_gear() -> None:
    granny = per_crank_turn(16, Span.exactly(22), Span.exactly(36))
    road = per_crank_turn(16, Span.exactly(50), Span.exactly(12))

    assert granny == Span.between("9.777", "9.778")
    assert road == Span.between("66.666", "66.667")


def test_a_gear_of_one_to_one_gives_the_pulses_of_the_freehub() -> None:
    assert per_crank_turn(12, Span.exactly(32), Span.exactly(32)) == Span.exactly(12)


def test_an_uncounted_cog_widens_the_pulses() -> None:
    assert per_crank_turn(16, Span.exactly(24), Span.between(24, 48)) == Span.between(8, 16)


def test_one_pulse_may_take_the_whole_of_its_share_of_the_turn() -> None:
    assert crank_angle_deg(1, Span.exactly(12)) == Span.exactly(30)
    assert crank_angle_deg(3, Span.exactly(12)) == Span.exactly(90)


@given(pulses=st.integers(1, 60), rings=st.lists(teeth, min_size=3), cogs=st.lists(teeth, min_size=3))
def test_teeth_that_are_counted_more_closely_stay_within_what_was_possible(
    pulses: int, rings: list[int], cogs: list[int]
) -> None:
    rings, cogs = sorted(rings), sorted(cogs)

    wide = per_crank_turn(pulses, Span.between(rings[0], rings[-1]), Span.between(cogs[0], cogs[-1]))
    close = per_crank_turn(pulses, Span.exactly(rings[1]), Span.exactly(cogs[1]))

    assert wide.holds(close)
    assert crank_angle_deg(1, wide).holds(crank_angle_deg(1, close))
