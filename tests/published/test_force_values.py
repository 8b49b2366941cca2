"""The force at a torque arm's anchor: derived from the balance of moments, worked through in a table."""

from __future__ import annotations

import pytest

from app.facts.span import Span
from app.mechanics.arm_force import anchor_force, force_allowed

HALF_A_NEWTON = 0.5
LEVERS_MM = (60, 80, 100, 120, 150, 200)
# Derived: F = T / L, rounded to whole newtons.
TABLE = {
    20: (333, 250, 200, 167, 133, 100),
    40: (667, 500, 400, 333, 267, 200),
    60: (1000, 750, 600, 500, 400, 300),
    80: (1333, 1000, 800, 667, 533, 400),
}


@pytest.mark.parametrize(
    ("torque_nm", "lever_mm", "force_n"),
    [
        (torque, lever, force)
        for torque, row in TABLE.items()
        for lever, force in zip(LEVERS_MM, row, strict=True)
    ],
)
def test_torque_over_lever_is_the_force_at_the_anchor(torque_nm: int, lever_mm: int, force_n: int) -> None:
    low, high = anchor_force(torque_nm=Span.exactly(torque_nm), lever_mm=Span.exactly(lever_mm)).ends

    assert abs(low - force_n) <= HALF_A_NEWTON
    assert abs(high - force_n) <= HALF_A_NEWTON


def test_a_factor_of_two_leaves_half_of_a_rating() -> None:
    """Common practice, no source: peak force times two within the rating."""
    assert force_allowed(rated_n=Span.exactly(1200), factor=Span.exactly(2)) == Span.exactly(600)
