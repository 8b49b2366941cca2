"""Thread that is left to hold by, under a nut and at the end of a thru-axle."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from app.facts.span import Span
from app.mechanics.axle_thread import nut_thread_mm, stub_mm, thru_axle_engagement_mm


def engagement(*, length: str = "171", thread: str = "17", added: str = "0", depth: str = "3.5") -> Span:
    """A 142 frame with dropouts of 10 mm, and the axle of 171 mm with 17 mm of thread that is sold for it."""
    return thru_axle_engagement_mm(
        under_head_mm=Span.exactly(length),
        thread_mm=Span.exactly(thread),
        added_mm=Span.exactly(added),
        thickness_mm=Span.exactly(10),
        lip_to_lip_mm=Span.exactly(135),
        socket_depth_mm=Span.exactly(depth),
    )


def test_a_long_axle_holds_by_all_the_thread_it_has() -> None:
    assert engagement() == Span.exactly(17)


def test_a_plate_under_the_head_is_taken_from_the_thread_at_the_other_end() -> None:
    assert engagement(length="163", added="4") == Span.exactly("10.5")


def test_an_axle_that_ends_short_of_the_thread_is_below_zero() -> None:
    assert engagement(length="145") == Span.exactly("-3.5")


def test_a_deeper_socket_leaves_less_of_the_axle_for_the_thread() -> None:
    assert engagement(length="160", depth="5") == engagement(length="158.5")


def test_the_axle_of_a_135_quick_release_hub_stands_out_5_5_mm_a_side() -> None:
    assert stub_mm(axle_length_mm=Span.exactly(146), over_locknut_mm=Span.exactly(135)) == Span.exactly("5.5")


def test_dropout_and_washers_are_taken_from_the_thread_for_the_nut() -> None:
    thread = nut_thread_mm(
        axle_length_mm=Span.exactly(175),
        over_locknut_mm=Span.exactly(135),
        thickness_mm=Span.around(6, "0.2"),
        washers_mm=Span.exactly(3),
    )

    assert thread == Span.around(11, "0.2")


@given(st.integers(1_000, 30_000), st.integers(0, 29_000), st.integers(0, 29_000))
def test_a_closer_reading_of_the_dropout_lies_within_the_wider_one(low: int, width: int, cut: int) -> None:
    wide = Span(low, low + width)
    narrow = Span(low + min(cut, width), low + width)

    def thread(thickness: Span) -> Span:
        return nut_thread_mm(
            axle_length_mm=Span.around(175, 1),
            over_locknut_mm=Span.exactly(135),
            thickness_mm=thickness,
            washers_mm=Span.exactly(3),
        )

    assert thread(wide).holds(thread(narrow))
