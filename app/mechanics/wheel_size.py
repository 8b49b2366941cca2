"""The size of a wheel on the road, and the tyres that a rim of some width takes."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from fractions import Fraction
from itertools import pairwise

from app.catalogue.wheel_standards import RimTyre, RollOut
from app.facts.span import Span


def geometric_circumference_mm(bead_seat_mm: Span, tyre_width_mm: Span) -> Span:
    """Circumference in mm of an unloaded tyre that is as high as it is wide.

    Source: sheldonbrown.com/cyclecomputer-calibration.html: π times bead seat and two tyre widths.
    """
    low, high = (bead_seat_mm + tyre_width_mm.times(2)).ends
    return Span.outward(math.pi * low, math.pi * high)


def rolled_circumference_mm(bead_seat_mm: Span, tyre_width_mm: Span, rows: Sequence[RollOut]) -> Span:
    """Circumference in mm under a rider: the geometric one, less the share that its tyre gives way by.

    The share is interpolated between the rows for the next tyres; beyond them the last row holds. What
    the rows allow on either side is in the span.
    """
    low, high = geometric_circumference_mm(bead_seat_mm, tyre_width_mm).ends
    narrow, wide = tyre_width_mm.ends
    shorter = [(row.tyre_mm.ends[0], row.shorter_by.ends[1]) for row in rows]
    give = _between_points(wide, [(row.tyre_mm.ends[0], row.give.ends[1]) for row in rows])
    most = _between_points(wide, shorter) + give
    least = _between_points(narrow, shorter) - give
    return Span.outward(low * (1 - most), high * (1 - least))


def _between_points(place: float, points: Sequence[tuple[float, float]]) -> float:
    """A column of a table at a place between its rows: a straight line from row to row, level beyond them."""
    ordered = sorted(points)
    within = min(max(place, ordered[0][0]), ordered[-1][0])
    for (left, low), (right, high) in pairwise(ordered):
        if within <= right:
            return low + (high - low) * (within - left) / (right - left)
    return ordered[-1][1]


def tyres_for_rim(
    inner_width_mm: Span, rows: Sequence[RimTyre], least_ratio: Fraction, most_ratio: Fraction
) -> tuple[Span, Span]:
    """The narrowest and the widest tyre, in mm, for a rim's inner width: each a limit with a span of its own.

    The table wins; a rim that is narrower or wider than all of its rows goes by tyre width over inner width.
    """
    found = [*_of_table(inner_width_mm, rows), *_of_ratio(inner_width_mm, rows, least_ratio, most_ratio)]
    narrowest, widest = found[0]
    for least, most in found[1:]:
        narrowest, widest = narrowest.hull(least), widest.hull(most)
    return narrowest, widest


def _of_table(inner: Span, rows: Sequence[RimTyre]) -> Iterator[tuple[Span, Span]]:
    for row in rows:
        if Span(row.inner_from_mm.low, row.inner_to_mm.high).meets(inner):
            yield row.tyre_from_mm, row.tyre_to_mm


def _of_ratio(
    inner: Span, rows: Sequence[RimTyre], least: Fraction, most: Fraction
) -> Iterator[tuple[Span, Span]]:
    first = min(row.inner_from_mm.low for row in rows)
    last = max(row.inner_to_mm.high for row in rows)
    if inner.low < first:
        narrow = Span(inner.low, min(inner.high, first))
        yield narrow.times(least), narrow.times(most)
    if inner.high > last:
        wide = Span(max(inner.low, last), inner.high)
        yield wide.times(least), wide.times(most)
