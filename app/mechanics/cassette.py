"""The cassette on its body: how wide the cogs stand, which spacers go behind them, when the chain is worn."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from fractions import Fraction
from itertools import combinations

from app.catalogue.drivetrain_standards import ChainWear, CogPitch
from app.catalogue.wheel_parts import Spacer
from app.facts.span import Exact, Span
from app.mechanics.counts import whole_numbers

MM_PER_INCH = Fraction("25.4")
MOST_SPACERS = 2


def stack_mm(cogs: CogPitch) -> Span:
    """From the outer face of the smallest cog to the inner face of the largest, in mm."""
    return cogs.pitch_mm.times(cogs.speeds - 1) + cogs.cog_mm


def nearest_row(cogs: int, rows: Iterable[CogPitch]) -> tuple[CogPitch, ...]:
    """The rows for so many cogs, or for the number nearest to it: several where makers differ."""
    listed = tuple(rows)
    off = min(abs(row.speeds - cogs) for row in listed)
    return tuple(row for row in listed if abs(row.speeds - cogs) == off)


def stack_of(cogs: Span, rows: Sequence[CogPitch]) -> Span:
    """Outer face of the smallest cog to inner face of the largest, in mm, for every count that it may be."""
    stacks = [
        row.pitch_mm.times(count - 1) + row.cog_mm
        for count in whole_numbers(cogs)
        for row in nearest_row(count, rows)
    ]
    return Span(min(stack.low for stack in stacks), max(stack.high for stack in stacks))


def between_outermost_cogs(cogs: Span, rows: Sequence[CogPitch]) -> Span:
    """Middle of the smallest cog to middle of the largest, in mm, for every count that it may be."""
    widths = [
        row.pitch_mm.times(count - 1) for count in whole_numbers(cogs) for row in nearest_row(count, rows)
    ]
    return Span(min(width.low for width in widths), max(width.high for width in widths))


def spacers_behind(needed_mm: Span, body: str, spacers: Iterable[Spacer]) -> tuple[Spacer, ...] | None:
    """The fewest spacers that add up to what goes behind the largest cog; None: no spacers do.

    needed_mm  from the least to the most that the cassette takes, in mm; 0 needs no spacer
    body       the interface of the freehub body
    """
    listed = sorted((spacer for spacer in spacers if body in spacer.interfaces), key=lambda spacer: spacer.id)
    return next((chosen for chosen in _few(listed) if _sum(chosen).meets(needed_mm)), None)


def _few(spacers: Sequence[Spacer]) -> Iterator[tuple[Spacer, ...]]:
    for number in range(MOST_SPACERS + 1):
        yield from combinations(spacers, number)


def _sum(spacers: Iterable[Spacer]) -> Span:
    return sum((spacer.thickness_mm for spacer in spacers), start=Span(0, 0))


def chain_limit_pct(speeds: Span, rows: Sequence[ChainWear]) -> Span:
    """The wear at which a chain is changed, in % of its length, for a count of cogs that may not be certain.

    A count that no row names takes the nearest row: a chain of 5 to 7 speeds that of 8.
    """
    limits = [_row_for(count, rows).change_at_pct for count in whole_numbers(speeds)]
    return Span(min(limit.low for limit in limits), max(limit.high for limit in limits))


def _row_for(count: int, rows: Sequence[ChainWear]) -> ChainWear:
    return min(rows, key=lambda row: min(abs(count - speeds) for speeds in row.speeds))


def elongation_pct(longer: Exact, over: Exact) -> Fraction:
    """Wear in % of length, of a chain that measures so much longer over a length; both in the same unit."""
    return 100 * Fraction(longer) / Fraction(over)


def inch_thread_mm(diameter_in: Exact, threads_per_inch: Exact) -> tuple[Fraction, Fraction]:
    """Diameter and pitch, in mm, of a thread that is given in inches and threads to the inch."""
    return Fraction(diameter_in) * MM_PER_INCH, MM_PER_INCH / Fraction(threads_per_inch)
