"""Which shims bring a rotor back to the plane in which its caliper stands."""

from __future__ import annotations

from dataclasses import dataclass
from itertools import product

from app.facts.span import Span

MOST_THIN = 3


@dataclass(frozen=True, slots=True)
class Shims:
    """So many of the thick ones and so many of the thin ones, and what they make together in mm."""

    thick: int
    thin: int
    total_mm: Span


def shims_for(shift_mm: Span, *, thick_mm: Span, thin_mm: Span) -> Shims:
    """The fewest shims that come within half a thin one of the middle of a shift to either side."""
    wanted, thick, thin = abs(shift_mm.low + shift_mm.high) // 2, thick_mm.low, thin_mm.low
    counts = product(range(wanted // thick + 2), range(MOST_THIN))
    off = {pair: abs(pair[0] * thick + pair[1] * thin - wanted) for pair in counts}
    close = [pair for pair in off if 2 * off[pair] <= thin] or list(off)
    chosen = min(close, key=lambda pair: (sum(pair), off[pair]))
    return Shims(*chosen, thick_mm.times(chosen[0]) + thin_mm.times(chosen[1]))
