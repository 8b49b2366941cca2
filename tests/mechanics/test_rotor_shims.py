"""Shims of half a millimetre and of two tenths that bring a rotor back to its caliper."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from app.facts.span import Span
from app.mechanics.rotor_shims import Shims, shims_for

THICK, THIN = Span.exactly("0.5"), Span.exactly("0.2")


def shims(shift_mm: str, plus_minus: str = "0") -> Shims:
    return shims_for(Span.around(shift_mm, plus_minus), thick_mm=THICK, thin_mm=THIN)


@pytest.mark.parametrize(
    ("shift_mm", "thick", "thin"),
    [("0", 0, 0), ("0.2", 0, 1), ("0.5", 1, 0), ("0.9", 2, 0), ("1.5", 3, 0), ("1.6", 3, 0), ("1.7", 3, 1)],
)
def test_as_few_shims_as_make_up_the_shift(shift_mm: str, thick: int, thin: int) -> None:
    found = shims(shift_mm)

    assert (found.thick, found.thin) == (thick, thin)


def test_a_reading_is_made_up_in_its_middle() -> None:
    assert shims("1.7", "0.6") == Shims(3, 1, Span.exactly("1.7"))


def test_a_rotor_too_far_out_wants_as_many_as_one_too_far_in() -> None:
    assert shims("-1.2") == shims("1.2")


@given(st.integers(-6000, 6000))
def test_they_come_within_half_a_thin_one(shift: int) -> None:
    found = shims_for(Span(shift, shift), thick_mm=THICK, thin_mm=THIN)

    assert abs(found.total_mm.low - abs(shift)) <= 100
