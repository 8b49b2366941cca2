"""The force with which a torque arm holds the axle from turning, and how much of it the arm may bear."""

from __future__ import annotations

from app.facts.span import THOUSAND, Span


def _quotient(above: Span, below: Span, scale: int) -> Span:
    """One span times a whole number, over another that is above zero; exact, and rounded outward."""
    low = above.low * scale // (below.high if above.low >= 0 else below.low)
    high = -(-above.high * scale // (below.low if above.high >= 0 else below.high))
    return Span(low, high)


def anchor_force(*, torque_nm: Span, lever_mm: Span) -> Span:
    """Force at the anchor in N, square to the lever: torque over the distance from the axle to the anchor.

    The arm alone carries the torque; the axle's flats and the friction under its nuts are a reserve.
    Source: the balance of moments about the axle. Errors: ValueError unless the lever is longer than nothing.
    """
    if lever_mm.low <= 0:
        message = f"A lever must be longer than 0 mm, not {lever_mm.ends[0]:g}."
        raise ValueError(message)
    # Thousandths of torque and lever cancel; a metre has a thousand mm, the answer is in thousandths.
    return _quotient(torque_nm, lever_mm, THOUSAND * THOUSAND)


def force_allowed(*, rated_n: Span, factor: Span) -> Span:
    """The most force in N that leaves a rating so many times as large; the factor is above zero."""
    return _quotient(rated_n, factor, THOUSAND)
