"""How finely a pedal sensor sees the crank turn, and how far the crank turns before the controller knows.

A sensor at the freehub turns with the cogs, so its pulses are multiplied by the gear.
The lowest gear gives the fewest.
"""

from __future__ import annotations

from fractions import Fraction

from app.facts.span import THOUSAND, Span

CRANK_TURN_DEG = 360


def per_crank_turn(per_freehub_turn: int, chainring: Span, cog: Span) -> Span:
    """Pulses, or edges, in one turn of the crank: those of one turn of the freehub times chainring over cog.

    chainring, cog  teeth; both above 0, else a ZeroDivisionError
    """
    low = Fraction(per_freehub_turn * chainring.low * THOUSAND, cog.high)
    high = Fraction(per_freehub_turn * chainring.high * THOUSAND, cog.low)
    return Span(low.__floor__(), high.__ceil__())


def crank_angle_deg(seen: int, per_turn: Span) -> Span:
    """The largest angle that the crank turns until so many pulses, or edges, have come in, in degrees.

    It is the worst case, where one has just gone by; on average it is half a pulse less.
    """
    low = Fraction(CRANK_TURN_DEG * seen * THOUSAND * THOUSAND, per_turn.high)
    high = Fraction(CRANK_TURN_DEG * seen * THOUSAND * THOUSAND, per_turn.low)
    return Span(low.__floor__(), high.__ceil__())
