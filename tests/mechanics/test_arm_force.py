"""The force at the end of a torque arm."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from app.facts.span import Span
from app.mechanics.arm_force import anchor_force, force_allowed

LENGTHS = st.integers(20_000, 300_000)


@pytest.mark.parametrize(
    ("torque_nm", "lever_mm", "force_n"), [(40, 100, 400), (20, 80, 250), (60, 120, 500), (80, 200, 400)]
)
def test_force_is_torque_over_lever(torque_nm: int, lever_mm: int, force_n: int) -> None:
    """Derivation: 1 N·m is 1 N at 1000 mm."""
    force = anchor_force(torque_nm=Span.exactly(torque_nm), lever_mm=Span.exactly(lever_mm))

    assert force == Span.exactly(force_n)


def test_a_third_of_a_newton_is_rounded_outward() -> None:
    assert anchor_force(torque_nm=Span.exactly(80), lever_mm=Span.exactly(150)) == Span(533_333, 533_334)


def test_the_shortest_lever_carries_the_most() -> None:
    force = anchor_force(torque_nm=Span.exactly(40), lever_mm=Span.between(100, 200))

    assert force == Span.between(200, 400)


def test_turning_the_other_way_pulls_the_other_way() -> None:
    force = anchor_force(torque_nm=Span.between(-40, 40), lever_mm=Span.exactly(100))

    assert force == Span.between(-400, 400)


def test_an_arm_without_length_is_refused() -> None:
    with pytest.raises(ValueError, match="longer than 0 mm"):
        anchor_force(torque_nm=Span.exactly(40), lever_mm=Span.between(0, 100))


@pytest.mark.parametrize(("factor", "allowed_n"), [("1.5", 800), ("2", 600), ("1.1", "1090.90909")])
def test_a_rating_over_its_factor_is_what_the_arm_may_bear(factor: str, allowed_n: int | str) -> None:
    allowed = force_allowed(rated_n=Span.exactly(1200), factor=Span.exactly(factor))

    assert allowed == Span.exactly(allowed_n)


@given(st.integers(1, 200_000), LENGTHS)
def test_force_times_lever_is_the_torque_again(torque: int, lever: int) -> None:
    force = anchor_force(torque_nm=Span(torque, torque), lever_mm=Span(lever, lever))

    assert force.low * lever <= torque * 1_000_000 <= force.high * lever
    assert force.width <= 1
