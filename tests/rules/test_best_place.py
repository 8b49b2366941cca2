"""The place that a mechanic is told for the clamp of an arm."""

from __future__ import annotations

import math
from functools import cache

import pytest

from app.catalogue.hub_parts import TorqueArm
from app.facts.answers import Answers
from app.facts.bike import Bike
from app.facts.fact import NumberFact
from app.facts.table import FACTS
from app.rules.torque_arm.best_place import best_place
from tests.demo import demo_catalogue, demo_standards
from tests.report.bikes import bike

ARMS = {arm.id: arm for arm in demo_catalogue().torque_arms}
CLAMPED = [arm for arm in ARMS.values() if arm.anchor == "stay_clamp"]


@cache
def seen(name: str) -> Bike:
    """A demo bike that shows every fact, each choice with one word."""
    return shown(bike(name))


def shown(answers: Answers) -> Bike:
    numbers = {name: answers.span(name) for name, fact in FACTS.items() if isinstance(fact, NumberFact)}
    words = {name: min(answers.words(name)) for name in FACTS if name not in numbers}
    return Bike({**numbers, **words}, frozenset())


@pytest.mark.parametrize(
    "arm", [arm for arm in ARMS.values() if arm.anchor == "stay_clamp"], ids=lambda arm: arm.id
)
def test_the_clamp_ends_up_within_reach_and_on_the_stay(arm: TorqueArm) -> None:
    place = best_place(seen("steel-touring-135-qr"), arm, demo_standards())
    assert place is not None

    half = place.half_length_mm.high
    assert arm.reach_from_mm.low <= place.along_arm_mm.low - half
    assert place.along_arm_mm.high + half <= arm.reach_to_mm.high
    assert place.tightest in dict(place.margins_mm)


def test_the_limit_named_as_tightest_has_least_in_hand() -> None:
    place = best_place(seen("hardtail-148-xd"), ARMS["arm-long"], demo_standards())
    assert place is not None

    in_hand = dict(place.margins_mm)

    assert in_hand[place.tightest].low == min(span.low for span in in_hand.values())


def test_the_band_is_as_large_as_the_stay_is_around() -> None:
    place = best_place(seen("trekking-135-rim-brake"), ARMS["arm-long"], demo_standards())
    assert place is not None

    assert place.band_mm.ends[0] == pytest.approx(place.around_mm.ends[0] / math.pi, abs=0.002)


def test_a_rim_brake_has_no_caliper_in_the_way_of_an_arm() -> None:
    place = best_place(seen("trekking-135-rim-brake"), ARMS["arm-long"], demo_standards())
    assert place is not None

    assert "caliper" not in dict(place.margins_mm)


def test_an_arm_on_the_brake_mount_has_no_place_on_the_stay() -> None:
    assert best_place(seen("steel-touring-135-qr"), ARMS["arm-mount"], demo_standards()) is None
