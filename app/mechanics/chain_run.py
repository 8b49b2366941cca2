"""Where the middle of the cogs is, and how far off straight the chain runs onto the outermost ones."""

from __future__ import annotations

import math
from fractions import Fraction

from app.facts.span import Span

HALF = Fraction(1, 2)
TENTH = 100


def middle_of_cogs(*, smallest_cog_face_mm: Span, stack_mm: Span) -> Span:
    """From the shell's right face to the middle of the cogs, in mm, where the lockring sets the outer end."""
    return smallest_cog_face_mm - stack_mm.times(HALF)


def middle_of_freewheel(*, largest_cog_face_mm: Span, stack_mm: Span) -> Span:
    """The same for a freewheel, which is screwed against the inner end."""
    return largest_cog_face_mm + stack_mm.times(HALF)


def rear_chainline_mm(*, over_locknut_mm: Span, right_mm: Span, middle_mm: Span) -> Span:
    """From the middle of the hub's width to the middle of the cogs, in mm.

    right_mm   from the shell's right face to the hub's right end
    middle_mm  from the shell's right face to the middle of the cogs
    """
    return over_locknut_mm.times(HALF) - right_mm + middle_mm


def off_straight_mm(*, angle_deg: Span, chainstay_mm: Span) -> Span:
    """How far off a chain gets at an angle over the length of the chainstay, in mm, outward to tenths."""
    (flat, steep), (short, long) = angle_deg.ends, chainstay_mm.ends
    low, high = math.tan(math.radians(flat)) * short, math.tan(math.radians(steep)) * long
    return Span(math.floor(low * 10) * TENTH, math.ceil(high * 10) * TENTH)
