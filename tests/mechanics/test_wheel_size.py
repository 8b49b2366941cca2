"""Tyres on rims, and how far a wheel rolls."""

from __future__ import annotations

from fractions import Fraction

from hypothesis import given
from hypothesis import strategies as st

from app.facts.span import Span
from app.mechanics.wheel_size import geometric_circumference_mm, rolled_circumference_mm, tyres_for_rim
from tests.demo import demo_standards

ends = st.lists(st.integers(8_000, 120_000), min_size=4, max_size=4).map(sorted)


def tyres(inner: Span) -> tuple[Span, Span]:
    return tyres_for_rim(inner, demo_standards().rim_tyres, Fraction(14, 10), Fraction(22, 10))


def rolled(bead_seat: Span, tyre: Span) -> Span:
    return rolled_circumference_mm(bead_seat, tyre, demo_standards().roll_outs)


def test_a_rim_within_one_row_has_two_plain_limits() -> None:
    assert tyres(Span.around(19, "0.3")) == (Span.exactly(28), Span.exactly(62))


def test_a_rim_on_the_border_of_two_rows_has_limits_of_both() -> None:
    assert tyres(Span.around(18, "0.3")) == (Span.between(25, 28), Span.between(50, 62))


def test_a_rim_wider_than_the_table_goes_by_the_ratio() -> None:
    assert tyres(Span.exactly(50)) == (Span.exactly(70), Span.exactly(110))


def test_a_rim_narrower_than_the_table_goes_by_the_ratio() -> None:
    assert tyres(Span.exactly(10)) == (Span.exactly(14), Span.exactly(22))


@given(ends=ends)
def test_a_rim_that_is_measured_more_closely_keeps_within_its_limits(ends: list[int]) -> None:
    wide, close = tyres(Span(ends[0], ends[3])), tyres(Span(ends[1], ends[2]))

    assert wide[0].holds(close[0])
    assert wide[1].holds(close[1])


def test_a_narrow_hard_tyre_rolls_what_its_geometry_says() -> None:
    bead_seat, tyre = Span.exactly(622), Span.exactly(25)

    geometric = geometric_circumference_mm(bead_seat, tyre)

    assert rolled(bead_seat, tyre).holds(geometric)


def test_a_share_between_two_rows_lies_on_the_line_between_them() -> None:
    bead_seat, tyre = Span.exactly(622), Span.exactly("38.5")

    low, high = geometric_circumference_mm(bead_seat, tyre).ends
    rolled_low, rolled_high = rolled(bead_seat, tyre).ends

    # Halfway from 0.005 at 37 mm to 0.010 at 40 mm, and 1 % to allow on either side.
    assert abs(rolled_low - low * (1 - 0.0075 - 0.01)) < 0.002
    assert abs(rolled_high - high * (1 - 0.0075 + 0.01)) < 0.002


@given(seats=st.lists(st.integers(305_000, 640_000), min_size=4, max_size=4).map(sorted), tyre=ends)
def test_a_tyre_that_is_read_more_closely_rolls_within_what_was_possible(
    seats: list[int], tyre: list[int]
) -> None:
    wide = rolled(Span(seats[0], seats[3]), Span(tyre[0], tyre[3]))
    close = rolled(Span(seats[1], seats[2]), Span(tyre[1], tyre[2]))

    assert wide.holds(close)
