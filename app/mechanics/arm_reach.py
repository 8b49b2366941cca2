"""How much of the stay's free stretch a torque arm's clamp can lie on."""

from __future__ import annotations

from app.facts.span import Span


def stretch_in_reach(
    *, clear_from_mm: Span, clear_to_mm: Span, reach_from_mm: Span, reach_to_mm: Span
) -> Span:
    """Length of stay that is both free and within reach, in mm; below zero where the two don't meet.

    All four are distances from the axle's centre along the stay.
    """
    return clear_to_mm.at_most(reach_to_mm) - clear_from_mm.at_least(reach_from_mm)
