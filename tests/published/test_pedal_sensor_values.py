"""What a sensor at the freehub sees of the crank, against what the trade finds."""

from __future__ import annotations

import pytest

from app.facts.span import Span
from app.mechanics.pedal_sensing import per_crank_turn

POSITIONS = 12
USUAL_GEARS = [(42, 16), (44, 15), (46, 18), (48, 14), (50, 12)]


@pytest.mark.parametrize(("chainring", "cog"), USUAL_GEARS)
def test_twelve_positions_give_thirty_to_fifty_pulses_per_crank_turn(chainring: int, cog: int) -> None:
    """Common practice, for usual gearing."""
    pulses = per_crank_turn(POSITIONS, Span.exactly(chainring), Span.exactly(cog))

    assert Span.between(30, 50).holds(pulses)
