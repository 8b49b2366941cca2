"""The gap of two bodies round the axle that are so far apart across it and so far along it."""

from __future__ import annotations

import math

from app.facts.span import Span

# Far more than the root of two lengths on a bike is off, in thousandths of a millimetre.
FLOAT_ERROR = 1e-6


def corner_gap(*, across_mm: Span, along_mm: Span) -> Span:
    """The slanting distance where both are above zero, else the larger; below zero where they overlap, in mm.

    across_mm  from the edge of one to the other, seen from the side
    along_mm   from the face of one to the other, along the axle
    """
    low, high = _gap(across_mm.low, along_mm.low), _gap(across_mm.high, along_mm.high)
    return Span(math.floor(low + FLOAT_ERROR), math.ceil(high - FLOAT_ERROR))


def _gap(across: int, along: int) -> float:
    return math.hypot(across, along) if across > 0 and along > 0 else max(across, along)
