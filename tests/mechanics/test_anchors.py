"""Where else than on the chainstay a torque arm could end."""

from __future__ import annotations

import pytest

from app.facts.span import Span
from app.mechanics.anchors import OtherAnchor, other_anchors
from app.rules.brake.caliper_readings import tables_of
from tests.demo import demo_standards


def anchors(mount: str | None, *, seatstay: bool) -> list[OtherAnchor]:
    return list(
        other_anchors(
            mount=mount,
            seatstay_bears_a_clamp=seatstay,
            arm_reach_mm=Span.between(100, 140),
            tables=tables_of(demo_standards()),
            standards=demo_standards(),
        )
    )


def test_an_unused_tab_holds_an_arm_between_its_two_holes() -> None:
    (tab,) = anchors("is", seatstay=False)

    low, high = tab.lever_mm.ends
    assert low == pytest.approx(39.9, abs=0.6)
    assert high == pytest.approx(79.1, abs=0.6)


def test_posts_lie_further_out_than_the_holes_of_a_tab() -> None:
    (tab,), (posts,) = anchors("is", seatstay=False), anchors("post", seatstay=False)

    assert posts.lever_mm.low > tab.lever_mm.low
    assert posts.lever_mm.high > tab.lever_mm.high


def test_what_an_anchor_bears_is_its_force_at_its_lever() -> None:
    (clamp,) = anchors(None, seatstay=True)

    assert clamp.bears_nm == Span.between(1000 * 100 // 1000, 2000 * 140 // 1000)


def test_the_anchor_that_is_sure_to_bear_most_comes_first() -> None:
    found = anchors("is", seatstay=True)

    assert [each.bears_nm.low for each in found] == sorted(
        (each.bears_nm.low for each in found), reverse=True
    )
    assert {each.place for each in found} == {"is_mount", "seatstay"}


def test_a_carbon_bike_with_its_brake_on_the_mount_has_nothing_else() -> None:
    assert anchors(None, seatstay=False) == []
