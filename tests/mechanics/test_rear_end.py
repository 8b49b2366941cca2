"""The width that a hub meets, and how far a rear end falls short of it."""

from __future__ import annotations

import pytest

from app.facts.span import Span
from app.mechanics.rear_end import floor_to_floor_mm, short_by_mm


@pytest.mark.parametrize(("lip", "floor"), [(135, 142), (141, 148), (150, 157), (170, 177), (190, 197)])
def test_sockets_of_3_5_mm_make_the_next_wider_hub_of_a_pair(lip: int, floor: int) -> None:
    width = floor_to_floor_mm(lip_to_lip_mm=Span.exactly(lip), socket_depth_mm=Span.exactly("3.5"))

    assert width == Span.exactly(floor)


def test_a_depth_counts_twice_with_its_doubt() -> None:
    width = floor_to_floor_mm(
        lip_to_lip_mm=Span.around(135, "0.3"), socket_depth_mm=Span.around("3.5", "0.2")
    )

    assert width == Span.around(142, "0.7")


def test_a_frame_without_sockets_is_as_wide_as_it_reads() -> None:
    width = floor_to_floor_mm(lip_to_lip_mm=Span.around(150, "0.3"), socket_depth_mm=Span(0, 0))

    assert width == Span.around(150, "0.3")


def test_a_narrow_frame_falls_short_by_what_it_must_be_spread() -> None:
    short = short_by_mm(Span.around("132.6", "0.3"), Span.exactly(134))

    assert short == Span.around("1.4", "0.3")


def test_a_wide_frame_falls_short_by_nothing() -> None:
    assert short_by_mm(Span.around(136, "0.3"), Span.exactly(134)) == Span(0, 0)


def test_a_reading_about_the_wanted_width_falls_short_by_no_more_than_its_doubt() -> None:
    assert short_by_mm(Span.around(134, "0.3"), Span.exactly(134)) == Span.between(0, "0.3")
