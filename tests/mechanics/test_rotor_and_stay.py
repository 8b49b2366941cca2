"""Rotor and motor shell beside a chainstay that leans in."""

from __future__ import annotations

from app.catalogue.along_axle import ShellStep
from app.facts.span import Span
from app.mechanics.rotor_and_stay import LeftStay, rotor_to_stay, shell_to_stay

# 6 mm further in for every 100 mm along it.
STAY = LeftStay(
    lateral_mm=Span.exactly(9),
    width_mm=Span.exactly(18),
    leans_in=Span.exactly("0.06"),
    read_at_mm=Span.exactly(100),
)


def test_where_it_was_measured_the_skin_is_half_a_width_further_in() -> None:
    assert STAY.skin_at(Span.exactly(100)) == Span.exactly(18)


def test_nearer_to_the_axle_the_stay_lies_further_out() -> None:
    assert STAY.skin_at(Span.exactly(50)) == Span.exactly(15)


def test_a_rotor_is_judged_at_its_edge_by_its_outer_face() -> None:
    room = rotor_to_stay(
        stay=STAY,
        seat_mm=Span.exactly("19.2"),
        rotor_thickness_mm=Span.exactly("1.8"),
        rotor_diameter_mm=Span.exactly(160),
    )

    assert room == Span.exactly("0.6")


def test_a_larger_rotor_comes_nearer_to_the_stay() -> None:
    small, large = (
        rotor_to_stay(
            stay=STAY,
            seat_mm=Span.exactly(20),
            rotor_thickness_mm=Span.exactly(2),
            rotor_diameter_mm=Span.exactly(size),
        )
        for size in (140, 203)
    )

    assert large.high < small.low


def test_the_step_of_the_shell_that_is_nearest_to_the_stay_counts() -> None:
    steps = [
        ShellStep(radius_mm=Span.exactly(50), inboard_mm=Span.exactly(-5)),
        ShellStep(radius_mm=Span.exactly(110), inboard_mm=Span.exactly(0)),
    ]

    assert shell_to_stay(stay=STAY, steps=steps[1:], shell_mm=Span.exactly(32)) == Span.exactly("13.4")
    assert shell_to_stay(stay=STAY, steps=steps, shell_mm=Span.exactly(32)) == Span.exactly(12)


def test_how_far_it_leans_in_matters_only_away_from_where_it_was_measured() -> None:
    unsure = STAY._replace(leans_in=Span.between("0.03", "0.09"))

    assert unsure.skin_at(Span.exactly(100)) == STAY.skin_at(Span.exactly(100))
    assert unsure.skin_at(Span.exactly(0)) == Span.between(9, 15)
