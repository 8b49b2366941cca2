"""Every mount, rotor and seat with every demo arm, in rear ends of 135, 142 and 148 mm."""

from __future__ import annotations

from functools import cache
from itertools import product

import pytest

from app.catalogue.hub_parts import AxleSet, TorqueArm
from app.facts.answers import Answer, Answers, choice, number
from app.facts.span import Span
from app.mechanics.plane import FAR_MM
from app.report.combinations import draw_up
from app.report.findings import open_facts_of
from app.report.wording import sentence_of, state_of
from app.rules.check import Check, Inapplicable
from app.rules.evaluate import Bench
from app.rules.outcome import Outcome
from app.rules.register import BY_ID
from tests.demo import demo_catalogue, demo_standards

MOUNTS, ROTORS, SEATS = ("is", "post", "flat"), (140, 160, 180, 203), ("chainstay", "seatstay")
WIDTHS = (135, 142, 148)
RULES = ("arm_caliper", "arm_caliper_far")
# The line of the bolts as it usually lies against the stay.
LINES = {
    ("is", "chainstay"): -8,
    ("is", "seatstay"): 36,
    ("post", "chainstay"): -14,
    ("post", "seatstay"): 30,
    ("flat", "chainstay"): 0,
    ("flat", "seatstay"): 55,
}
MEASURED = (
    number("rotor_offset_mm", Span.around("14.35", "0.3")),
    number("caliper_outboard_depth_mm", Span.around(20, "0.5")),
    number("caliper_nearest_mm", Span.around(41, 1)),
    number("caliper_bearing_deg", Span.around(38, 1)),
    number("caliper_far_mm", Span.around(84, 1)),
    number("caliper_far_bearing_deg", Span.around(24, 1)),
)
every_bike = pytest.mark.parametrize(("mount", "rotor", "seat"), list(product(MOUNTS, ROTORS, SEATS)))


def bike(mount: str, rotor: int, seat: str, *more: Answer) -> Answers:
    """A bike of whose caliper only the mount, the rotor and the line of the bolts are known."""
    told = (
        choice("rear_brake", {"disc"}),
        choice("caliper_mount", {mount}),
        choice("caliper_seat", {seat}),
        choice("caliper_adapter", {"none"}),
        number("rotor_diameter_mm", Span.around(rotor, 1)),
        number("caliper_line_bearing_deg", Span.around(LINES[mount, seat], 1)),
        *more,
    )
    return Answers({answer.fact: answer for answer in told})


@cache
def sold_together() -> frozenset[tuple[str, str]]:
    """Axle sets and arms that stand in one kit somewhere."""
    builds = [build for hub in draw_up(demo_catalogue(), ()).hubs for build in hub.builds]
    return frozenset((build[1].id, build[2].id) for build in builds)


def goes_into(arm: TorqueArm, width: int) -> list[AxleSet]:
    return [
        each
        for each in demo_catalogue().axle_sets
        if (each.id, arm.id) in sold_together() and each.over_locknut_mm.meets(Span.exactly(width))
    ]


def bench(rule_id: str, answers: Answers) -> Bench:
    return Bench(BY_ID[rule_id], answers, demo_catalogue(), demo_standards())


@every_bike
@pytest.mark.parametrize("rule_id", RULES)
def test_every_arm_gets_numbers_or_the_measurement_that_is_missing(
    mount: str, rotor: int, seat: str, rule_id: str
) -> None:
    answers = bike(mount, rotor, seat)
    asked = bench(rule_id, answers)

    for arm in demo_catalogue().torque_arms:
        result = asked.result((arm,))
        given = result.given
        if arm.anchor == "mount_bolt":
            assert isinstance(given, Inapplicable)
            continue
        assert isinstance(given, Check)
        assert given.reading is not None
        assert abs(given.reading).ends[1] < FAR_MM
        if mount == "flat":
            assert result.outcome is Outcome.CANT_TELL
        if result.outcome is Outcome.CANT_TELL:
            missing = open_facts_of(asked, answers, result, (arm,))
            assert "caliper_nearest_mm" in missing
            assert "measure" in sentence_of(asked.rule, result, state_of(result, missing))


@every_bike
def test_published_mounts_settle_most_arms_without_a_measured_caliper(
    mount: str, rotor: int, seat: str
) -> None:
    asked = bench("arm_caliper_far", bike(mount, rotor, seat))
    arms = [arm for arm in demo_catalogue().torque_arms if arm.anchor == "stay_clamp"]
    settled = [arm for arm in arms if asked.result((arm,)).outcome in {Outcome.PASSED, Outcome.FAILED}]

    assert len(settled) >= (len(arms) - 1 if mount != "flat" else 0)


@pytest.mark.parametrize(("rotor", "seat"), list(product(ROTORS, SEATS)))
def test_a_flat_mount_that_was_measured_is_settled(rotor: int, seat: str) -> None:
    asked = bench("arm_caliper_far", bike("flat", rotor, seat, *MEASURED))
    arms = [arm for arm in demo_catalogue().torque_arms if arm.anchor == "stay_clamp"]

    assert {asked.result((arm,)).outcome for arm in arms} <= {Outcome.PASSED, Outcome.FAILED}


@pytest.mark.parametrize("width", WIDTHS)
def test_an_arm_is_only_ever_offered_with_an_axle_set_that_it_is_made_for(width: int) -> None:
    together = {arm.id for arm in demo_catalogue().torque_arms if goes_into(arm, width)}
    refused = {arm.id for arm in demo_catalogue().torque_arms} - together

    assert together
    assert refused
    for arm in demo_catalogue().torque_arms:
        assert all(axle_set.id in arm.axle_sets for axle_set in goes_into(arm, width))
