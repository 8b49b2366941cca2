"""Everything on the axle of the demo's kits, from end to end."""

from __future__ import annotations

import pytest

from app.catalogue.along_axle_checks import length_of
from app.catalogue.hub_parts import AxleSet, Freehub
from app.facts.answers import Answers, choice, number
from app.facts.span import Span
from app.mechanics.axle_section import AxialStack, OnTheAxle, stack_on
from tests.demo import demo_catalogue, demo_standards
from tests.report.bikes import bike

CATALOGUE = demo_catalogue()
BY_ID = {part.id: part for kind in ("hubs", "axle_sets") for part in CATALOGUE.parts(kind)}
WITH_BOTH_SIDES = [each for each in CATALOGUE.axle_sets if each.left_stack and each.right_stack]
WITH_A_CASSETTE = [
    each for each in WITH_BOTH_SIDES if each.rear_chainline_mm is not None and each.id != "beck-120-bolt"
]
SILENT = [each for each in CATALOGUE.axle_sets if not each.right_stack]
every_whole_set = pytest.mark.parametrize("axle_set", WITH_BOTH_SIDES, ids=lambda each: each.id)


def kit_with(axle_set: AxleSet) -> OnTheAxle:
    hub = next(each for each in CATALOGUE.hubs if each.id in axle_set.hubs)
    arm = next(each for each in CATALOGUE.torque_arms if axle_set.id in each.axle_sets)
    freehub = next(each for each in CATALOGUE.freehubs if hub.id in each.hubs)
    return OnTheAxle(hub, axle_set, arm, freehub)


def stack(axle_set: AxleSet, answers: Answers) -> AxialStack:
    return stack_on(answers, kit_with(axle_set), demo_standards())


@every_whole_set
def test_the_pieces_leave_no_gap_from_the_left_floor_to_the_shell(axle_set: AxleSet) -> None:
    found = stack(axle_set, Answers())

    left = found.of_kind("piece")[: len(axle_set.left_stack)]
    shell_left = found.faces.shell_left_mm
    assert left[0].from_mm == found.faces.left_floor_mm
    assert shell_left is not None
    assert left[-1].to_mm.meets(shell_left)


@every_whole_set
def test_both_sides_and_the_shell_fill_the_width_of_the_hub(axle_set: AxleSet) -> None:
    hub = kit_with(axle_set).hub
    assert hub.shell_width_mm is not None

    total = length_of(axle_set.left_stack) + hub.shell_width_mm + length_of(axle_set.right_stack)

    assert axle_set.over_locknut_mm.meets(total)


def line_of_cogs(axle_set: AxleSet, freehub: Freehub) -> float:
    """With nine cogs, or with seven where the body takes no more."""
    cogs = 7 if freehub.interface in {"threaded_freewheel", "hg_short_7"} else 9
    bike_with = Answers().with_(
        choice("drivetrain", {"derailleur"}),
        choice("dropout_kind", set(axle_set.dropout_kinds)),
        number("socket_depth_mm", Span.exactly("3.5")),
        number("cassette_speeds", Span.exactly(cogs)),
    )
    found = stack_on(bike_with, kit_with(axle_set)._replace(freehub=freehub), demo_standards())
    (row,) = found.of_kind("cogs")
    line = (row.from_mm + row.to_mm).times("0.5") - found.middle_mm
    return (line.low + line.high) / 2000


@pytest.mark.parametrize("axle_set", WITH_A_CASSETTE, ids=lambda each: each.id)
def test_the_cogs_of_one_of_its_freehubs_stand_where_the_maker_says(axle_set: AxleSet) -> None:
    """To half a millimetre, as chainlines are measured."""
    bodies = [each for each in CATALOGUE.freehubs if set(each.hubs) & set(axle_set.hubs)]
    assert axle_set.rear_chainline_mm is not None

    off = min(abs(line_of_cogs(axle_set, body) - axle_set.rear_chainline_mm.ends[0]) for body in bodies)

    assert off <= 0.5


def test_a_shell_that_nobody_described_is_left_out_and_named() -> None:
    found = stack(SILENT[0], Answers())

    assert found.of_kind("shell") == ()
    assert ("axle_set", "right_stack") in found.lacking


def test_a_touring_bike_has_everything_on_its_axle_from_nut_to_nut() -> None:
    axle_set = BY_ID["weir-135-bolt"]
    assert isinstance(axle_set, AxleSet)

    found = stack(axle_set, bike("steel-touring-135-qr"))

    kinds = [row.kind for row in found.rows]
    assert [kinds[0], kinds[-1]] == ["nut", "nut"]
    assert {
        "dropout",
        "washers",
        "arm",
        "rotor",
        "caliper",
        "flange",
        "shell",
        "cover",
        "cogs",
        "chain",
    } <= set(kinds)
    assert kinds.index("rotor") < kinds.index("shell") < kinds.index("cogs")


def test_a_socket_puts_both_floors_outside_of_the_lips() -> None:
    axle_set = BY_ID["weir-142-thru"]
    assert isinstance(axle_set, AxleSet)

    found = stack(axle_set, bike("gravel-142-flat-mount"))

    assert found.faces.left_floor_mm.high < 0
    assert found.faces.right_floor_mm.low > found.faces.right_lip_mm.high
    assert found.middle_mm.holds(Span.exactly("67.5"))
