"""What is left to wear of a rotor, by the kind that it is taken for."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from app.facts.span import Span
from app.mechanics.rotor_wear import Wear, wear_of
from tests.demo import demo_standards

ROWS = demo_standards().rotor_thicknesses


def wear(low_mm: str, high_mm: str) -> Wear:
    return wear_of(Span.between(low_mm, high_mm), ROWS)


@pytest.mark.parametrize(
    ("thick_mm", "least_mm"),
    [
        ("1.7", Span.between("1.5", "1.55")),
        ("1.8", Span.between("1.5", "1.55")),
        ("1.95", Span.between("1.7", "1.8")),
        ("2.2", Span.exactly(2)),
        ("2.4", Span.exactly(2)),
    ],
)
def test_a_rotor_is_taken_for_the_thinnest_kind_that_it_can_be(thick_mm: str, least_mm: Span) -> None:
    found = wear(thick_mm, thick_mm)

    assert found.least_mm == least_mm
    assert found.left_mm == Span.exactly(thick_mm) - least_mm


def test_a_rotor_worn_through_has_less_than_nothing_left() -> None:
    assert wear("1.4", "1.4").left_mm == Span.between("-0.15", "-0.1")


def test_a_reading_on_both_sides_of_a_kind_holds_both() -> None:
    found = wear("1.78", "1.84")

    assert found.least_mm == Span.between("1.5", "1.8")
    assert found.left_mm == Span.between("0.001", "0.3")


@given(st.integers(1000, 4000), st.integers(0, 900), st.data())
def test_a_closer_reading_leaves_what_the_wider_one_held(low: int, width: int, data: st.DataObject) -> None:
    wide = Span(low, low + width)
    first, second = (data.draw(st.integers(wide.low, wide.high)) for _ in range(2))

    before, after = wear_of(wide, ROWS), wear_of(Span(min(first, second), max(first, second)), ROWS)

    assert before.left_mm.holds(after.left_mm)
    assert before.least_mm.holds(after.least_mm)
