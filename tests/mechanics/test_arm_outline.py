"""A torque arm seen from the left: as it is drawn, and at each angle at which it can sit."""

from __future__ import annotations

import pytest
from shapely import Point, Polygon

from app.catalogue.hub_parts import TorqueArm
from app.facts.span import Span
from app.mechanics.arm_outline import arm_body, index_angles, measures_of, outline_with_holes
from app.mechanics.plane import at
from tests.demo import demo_catalogue

ARMS = demo_catalogue().torque_arms
every_arm = pytest.mark.parametrize("arm", ARMS, ids=lambda arm: arm.id)
NAMED = {arm.id: arm for arm in ARMS}
ROUND_MM = 0.05


@every_arm
def test_a_demo_arm_is_one_piece_with_a_hole_for_its_axle(arm: TorqueArm) -> None:
    cut = outline_with_holes(arm)

    assert isinstance(cut, Polygon)
    assert cut.is_valid
    assert not cut.contains(Point(0, 0))
    assert len(cut.interiors) == len(arm.holes)


@every_arm
def test_a_demo_arm_reaches_as_far_as_its_clamp_goes(arm: TorqueArm) -> None:
    _, _, end, _ = outline_with_holes(arm).bounds

    assert end >= arm.reach_to_mm.ends[1]


@every_arm
def test_the_clamp_of_a_demo_arm_has_a_bar_beneath_it(arm: TorqueArm) -> None:
    body = arm_body(measures_of(arm), 0)
    half = arm.bar_half_width_mm.ends[0]

    for along in (arm.reach_from_mm.ends[0], arm.reach_to_mm.ends[1]):
        assert body.inner.covers(Point(along, half - ROUND_MM))
        assert body.inner.covers(Point(along, ROUND_MM - half))


def test_an_arm_without_an_outline_is_a_disc_with_a_straight_bar() -> None:
    plain = NAMED["arm-long"].model_copy(update={"outline": (), "holes": ()})
    cut = outline_with_holes(plain)

    assert cut.bounds == pytest.approx((-22.7, -22.7, 173, 22.7), abs=ROUND_MM)
    assert cut.covers(Point(172, 8.5))
    assert not cut.covers(Point(172, 8.7))


def test_a_crank_leaves_room_above_the_bar() -> None:
    cut = outline_with_holes(NAMED["arm-slim"])

    assert not cut.covers(Point(45, 0))
    assert cut.covers(Point(45, -12))
    assert cut.covers(Point(120, 5))


def test_an_arm_with_steps_sits_at_those_and_an_arm_that_turns_at_whole_degrees() -> None:
    assert index_angles(NAMED["arm-fold"]) == (-6, 0, 6, 12)
    assert index_angles(NAMED["arm-twin"]) == tuple(range(-12, 13))


def test_an_arm_that_says_nothing_of_angles_lies_along_the_stay() -> None:
    assert index_angles(NAMED["arm-band"]) == (0,)


def test_an_arm_that_turns_by_less_than_a_degree_has_one_angle() -> None:
    stiff = NAMED["arm-band"].model_copy(
        update={"index_from_deg": Span.exactly("2.2"), "index_to_deg": Span.exactly("2.7")}
    )

    assert index_angles(stiff) == (2.2,)


def test_a_turned_arm_points_towards_its_angle() -> None:
    body = arm_body(measures_of(NAMED["arm-long"]), 20)

    assert body.inner.covers(Point(at(150, 20)))
    assert not body.outer.covers(Point(at(150, 0)))


def test_what_is_not_sure_of_an_arm_lies_between_its_smallest_and_its_largest() -> None:
    rough = NAMED["arm-long"].model_copy(
        update={"disc_radius_mm": Span.around(22, 1), "inner_face_mm": Span.around(6, "0.2")}
    )
    body = arm_body(measures_of(rough), 0)

    assert body.outer.covers(Point(0, 23))
    assert not body.inner.covers(Point(0, 21.5))
    assert body.axial_outer == (0.4, 6.2)
    assert body.axial_inner == (0.4, 5.8)
