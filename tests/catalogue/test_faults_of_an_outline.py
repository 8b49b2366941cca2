"""An outline that no arm can be cut to is a fault of the arm, and so is an angle that no arm can sit at."""

from __future__ import annotations

from typing import Any

import pytest

from app.catalogue.hub_parts import TorqueArm
from app.catalogue.text import dump_catalogue, load_catalogue
from app.mechanics.arm_beside_caliper import MOST_WANTED_MM
from tests.catalogue.small_catalogue import changed, faults_in

BAR = [[0, -9], [150, -9], [150, 9], [0, 9]]
HOLE = [[-6, -5], [6, -5], [6, 5], [-6, 5]]

FAULTS: list[Any] = [
    pytest.param({"outline": BAR[:2]}, "outline", "at least 3 corners, but has 2", id="two corners"),
    pytest.param({"outline": [[0, -9], [150, 9], [150, -9], [0, 9]]}, "outline", "cross itself", id="a bow"),
    pytest.param({"outline": [*BAR, [0, -9]]}, "outline", "come back to a corner", id="closed twice"),
    pytest.param(
        {"outline": [[0, -9], [150, -9], [90, -9], [90, 9]]}, "outline", "cross itself", id="a spike"
    ),
    pytest.param(
        {"outline": [[0, -9], [150, -9], [75, 0], [150, 9], [75, 0]]}, "outline", "corner", id="a knot"
    ),
    pytest.param(
        {"outline": [[0, {"value": -9, "plus_minus": 1}], *BAR[1:]]},
        "outline",
        "without a ±",
        id="a rough one",
    ),
    pytest.param(
        {"outline": [[90, -9], [150, -9], [150, 9]]}, "outline", "within disc_radius_mm", id="a bar apart"
    ),
    pytest.param({"outline": [[0, 0, 0]]}, "outline[1]", "", id="a corner in space"),
    pytest.param(
        {"outline": BAR, "holes": [HOLE[:1]]}, "holes", "at least 3 corners", id="a hole of a point"
    ),
    pytest.param({"holes": [HOLE]}, "outline", "holes are given", id="holes in nothing"),
    pytest.param({"clearance_mm": 5.1}, "clearance_mm", "at most 5", id="an arm that keeps its distance"),
    pytest.param({"index_from_deg": 4}, "index_to_deg", "belong together", id="one end of a turn"),
    pytest.param(
        {"index_from_deg": 9, "index_to_deg": 4}, "index_from_deg", "below index_to_deg", id="a turn back"
    ),
    pytest.param(
        {"index_from_deg": -9, "index_to_deg": 4, "index_angles_deg": [0]},
        "index_angles_deg",
        "keep one of the two",
        id="steps and a turn",
    ),
    pytest.param(
        {"index_angles_deg": [{"low": 3, "high": 5}]}, "index_angles_deg", "single numbers", id="a rough step"
    ),
]


@pytest.mark.parametrize(("change", "field", "words"), FAULTS)
def test_a_fault_of_an_outline_is_named(change: dict[str, Any], field: str, words: str) -> None:
    found = [fault for fault in faults_in(changed("torque_arms", change)) if fault.field == field]

    assert len(found) == 1
    assert words in found[0].message


@pytest.mark.parametrize(
    "change", [{"outline": BAR, "holes": [HOLE]}, {"index_from_deg": -9, "index_to_deg": 4}]
)
def test_an_arm_with_an_outline_or_a_turn_is_none(change: dict[str, Any]) -> None:
    assert faults_in(changed("torque_arms", change)) == ()


def test_the_geometry_answers_for_as_much_clearance_as_a_maker_may_want() -> None:
    assert faults_in(changed("torque_arms", {"clearance_mm": str(MOST_WANTED_MM)})) == ()


def test_an_outline_comes_back_as_it_was_written() -> None:
    catalogue = load_catalogue(changed("torque_arms", {"outline": BAR, "holes": [HOLE]}))

    again = load_catalogue(dump_catalogue(catalogue))

    arm = again.torque_arms[0]
    assert isinstance(arm, TorqueArm)
    assert arm == catalogue.torque_arms[0]
    assert [[end.ends[0] for end in corner] for corner in arm.outline] == BAR
