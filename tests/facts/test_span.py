"""Spans never claim to know more than they do: every sum holds each sum of two values inside."""

from __future__ import annotations

from decimal import Decimal
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from app.facts.span import Span, rounded

whole = st.integers(-10_000_000, 10_000_000)
exact = st.fractions(min_value=-10_000, max_value=10_000, max_denominator=5_000)
spans = st.builds(lambda a, b: Span(min(a, b), max(a, b)), whole, whole)


@st.composite
def spans_with_a_value(draw: st.DrawFn) -> tuple[Span, Span]:
    span = draw(spans)
    value = draw(st.integers(span.low, span.high))
    return span, Span(value, value)


def test_a_difference_of_tenths_is_exact() -> None:
    difference = Span.exactly("128.3") - Span.exactly("127.3")

    assert difference == Span.exactly(1)


def test_a_span_upside_down_is_refused() -> None:
    with pytest.raises(ValueError, match="from low to high"):
        Span(2, 1)


@given(exact)
def test_more_places_than_thousandths_widen_outward(value: Fraction) -> None:
    span = Span.exactly(value)

    assert span.low <= value * 1000 <= span.high
    assert span.width <= 1
    assert span.is_exact is ((value * 1000).denominator == 1)


@given(exact, exact)
def test_a_reading_holds_both_ends_of_its_uncertainty(value: Fraction, half: Fraction) -> None:
    span = Span.around(value, abs(half))

    assert span.low <= (value - abs(half)) * 1000 < span.low + 1
    assert span.high - 1 < (value + abs(half)) * 1000 <= span.high


@given(st.floats(-1e6, 1e6), st.floats(0, 1e6))
def test_a_sum_in_floats_is_rounded_outward(low: float, more: float) -> None:
    span = Span.outward(low, low + more)

    assert span.low <= low * 1000
    assert span.high >= (low + more) * 1000


@given(spans, spans, spans)
def test_adding_has_no_order(first: Span, second: Span, third: Span) -> None:
    assert (first + second) + third == first + (second + third)
    assert first + second == second + first
    assert first - second == first + -second


@given(spans_with_a_value(), spans_with_a_value())
def test_each_value_inside_stays_inside(first: tuple[Span, Span], second: tuple[Span, Span]) -> None:
    (one, value), (other, another) = first, second

    assert (one + other).holds(value + another)
    assert (one - other).holds(value - another)
    assert abs(one).holds(abs(value))
    assert one.at_least(other).holds(value.at_least(another))
    assert one.at_most(other).holds(value.at_most(another))


@given(spans_with_a_value(), exact)
def test_a_multiple_holds_the_multiple_of_each_value(inside: tuple[Span, Span], factor: Fraction) -> None:
    span, value = inside

    assert span.times(factor).low <= value.low * factor <= span.times(factor).high


@given(spans, spans)
def test_two_spans_meet_where_they_share_a_point(one: Span, other: Span) -> None:
    assert one.meets(other) is other.meets(one)
    assert one.meets(other) is (max(one.low, other.low) <= min(one.high, other.high))
    assert one.hull(other).holds(one)
    assert one.hull(other).holds(other)


@given(spans, st.integers(0, 1000), st.integers(0, 1000))
def test_widening_keeps_what_was_inside(span: Span, below: int, above: int) -> None:
    assert span.widened(below, above).holds(span)


@given(whole, st.integers(0, 3))
def test_rounding_for_the_page_goes_the_way_it_is_told(thousandths: int, places: int) -> None:
    down, up = (rounded(thousandths, places, up=up) for up in (False, True))

    assert down * 1000 <= thousandths <= up * 1000
    assert up - down <= Decimal(1).scaleb(-places)


READINGS = [
    ("135.4", "0.3", True, True),
    ("135.5", "0.5", True, True),
    ("134.6", "0.5", False, True),
    ("134.6", "0.4", False, True),
    ("134.6", "0.3", False, False),
    ("135.5", "1.5", False, True),
]


@pytest.mark.parametrize(("value", "half", "inside", "touches"), READINGS)
def test_limits_of_135_to_136_include_their_ends(
    value: str, half: str, *, inside: bool, touches: bool
) -> None:
    takes = Span.between(135, 136)

    reading = Span.around(value, half)

    assert takes.holds(reading) is inside
    assert takes.meets(reading) is touches
