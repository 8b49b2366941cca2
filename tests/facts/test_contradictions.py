"""Facts that can't both be are named together, and only where no uncertainty is left."""

from __future__ import annotations

import pytest

from app.facts.answers import Answers, choice, number
from app.facts.contradictions import contradictions
from app.facts.form_reader import read_form
from app.facts.span import Span


@pytest.mark.parametrize(
    ("typed", "message"),
    [
        (
            {"rear_brake": "coaster", "caliper_mount": "post"},
            "A coaster brake and a disc brake can't both be at the rear. Change one.",
        ),
        (
            {"rear_brake": "rim, drum", "rotor_diameter_mm": "160"},
            "Kind of brake is rim or drum and rotor diameter is given: both can't be. Change one.",
        ),
        (
            {"dropout_kind": "thru_axle", "slot_width_mm": "10.1"},
            "Kind of dropout is closed, with thru-axle and slot width is given: both can't be. Change one.",
        ),
        (
            {"dropout_kind": "track_end", "thru_axle_pitch_mm": "1.5"},
            "Kind of dropout is track end and thru-axle thread pitch is given: both can't be. Change one.",
        ),
        (
            {"dropout_kind": "track_end", "socket_depth_mm": "3.5"},
            "Kind of dropout is track end and socket depth is more than 0: both can't be. Change one.",
        ),
        (
            {"drivetrain": "single_speed", "cassette_speeds": "9"},
            (
                "Kind of drivetrain is single speed and number of cogs is more than 1: "
                "both can't be. Change one."
            ),
        ),
        (
            {"pack_present": "no", "own_pack_full_v": "42"},
            "Battery pack on the bike is no and own pack, full is given: both can't be. Change one.",
        ),
        (
            {"smallest_cog": "28", "largest_cog": "11"},
            "Smallest cog is above largest cog: both can't be. Change one.",
        ),
        (
            {"stay_clear_from_mm": "200", "stay_clear_to_mm": "110"},
            "Free stretch begins is above free stretch ends: both can't be. Change one.",
        ),
    ],
)
def test_two_facts_that_cannot_both_be(typed: dict[str, str], message: str) -> None:
    first, second = typed

    (error,) = read_form(typed).errors

    assert (error.fact, error.also, error.message) == (first, second, message)
    assert error.typed == typed[first]


@pytest.mark.parametrize(
    "typed",
    [
        {"rear_brake": "coaster, disc", "caliper_mount": "post"},
        {"rear_brake": "?", "caliper_mount": "post"},
        {"rear_brake": "coaster", "caliper_mount": "?"},
        {"rear_brake": "rim", "caliper_mount": "post"},
        {"dropout_kind": "track_end", "socket_depth_mm": "0"},
        {"drivetrain": "single_speed", "cassette_speeds": "1"},
        {"smallest_cog": "11", "largest_cog": "11"},
        {"stay_clear_from_mm": "111", "stay_clear_to_mm": "110"},
    ],
)
def test_what_may_still_be_so_is_no_contradiction(typed: dict[str, str]) -> None:
    assert read_form(typed).errors == ()


def test_a_coaster_brake_is_told_once_however_much_is_known_of_a_disc_brake() -> None:
    answers = Answers().with_(
        choice("rear_brake", ["coaster"]),
        choice("caliper_mount", ["is"]),
        number("rotor_diameter_mm", Span.exactly(160)),
        number("caliper_nearest_mm", Span.exactly(40)),
    )

    assert len(contradictions(answers)) == 1


def test_nothing_known_contradicts_nothing() -> None:
    assert contradictions(Answers()) == ()
