"""Every mount, rotor and seat with every demo arm, and every axle set with its hubs, is drawn to scale."""

from __future__ import annotations

from dataclasses import replace
from itertools import product

import pytest

from app.catalogue.hub_parts import AxleSet
from app.drawings.of_kit import AXLE, SIDE_VIEW, drawing_of
from app.drawings.subject import Subject
from app.facts.answers import choice, number
from app.facts.span import Span
from app.report.findings import finding_of
from app.rules.evaluate import Bench
from app.rules.register import BY_ID
from tests.contact_sheet import answers_for, subject_with
from tests.demo import demo_catalogue, demo_standards
from tests.drawings.dimensions import dimensions, faults_of
from tests.drawings.read_back import read_back
from tests.report.test_every_caliper import MOUNTS, ROTORS, SEATS

ARMS = [arm for arm in demo_catalogue().torque_arms if arm.anchor == "stay_clamp"]


@pytest.mark.parametrize(("mount", "rotor", "seat"), list(product(MOUNTS, ROTORS, SEATS)))
def test_every_arm_beside_every_caliper_is_dimensioned_as_the_rules_say(
    mount: str, rotor: int, seat: str
) -> None:
    for arm in ARMS:
        subject = subject_with(answers_for(mount, rotor, seat), arm)
        drawing = drawing_of(subject, SIDE_VIEW)
        assert drawing, arm.id

        drawn = read_back(drawing)

        assert len(dimensions(drawn)) == 1, arm.id
        assert faults_of(subject, drawn) == [], arm.id


@pytest.mark.parametrize("axle_set", demo_catalogue().axle_sets, ids=lambda part: part.id)
def test_every_axle_set_is_drawn_from_end_to_end(axle_set: AxleSet) -> None:
    drawing = drawing_of(subject_on(axle_set), AXLE)

    assert drawing
    assert faults_of(subject_on(axle_set), read_back(drawing)) == []
    assert dimensions(read_back(drawing))


def subject_on(axle_set: AxleSet) -> Subject:
    """A bike as wide as an axle set is, with that set on a hub of its own."""
    stock = demo_catalogue()
    kind = axle_set.dropout_kinds[0]
    width = axle_set.over_locknut_mm - (Span(7_000, 7_000) if kind == "thru_axle" else Span(0, 0))
    answers = answers_for("post", 180, "seatstay").with_(
        choice("dropout_kind", {kind}),
        number("dropout_width_mm", width),
        number("socket_depth_mm", Span(3_500, 3_500)),
        number("largest_cog", Span(34_000, 34_000)),
        number("smallest_cog", Span(11_000, 11_000)),
        choice("drivetrain", {"derailleur"}),
        choice("frame_material", {"steel"}),
        choice("frame_heat_treated", {"no"}),
    )
    hub = next(each for each in stock.hubs if each.id in axle_set.hubs)
    freehub = next(each for each in stock.freehubs if hub.id in each.hubs)
    bench = Bench(BY_ID["dropout_width"], answers, stock, demo_standards())
    finding = finding_of(bench, answers, (axle_set,))
    subject = subject_with(answers, ARMS[0])
    return replace(subject, hub=hub, axle_set=axle_set, freehub=freehub, findings={finding.rule_id: finding})
