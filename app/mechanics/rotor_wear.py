"""How much of a rotor's thickness may still wear off, by the thickness that its kind has when new."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import NamedTuple

from app.catalogue.brake_standards import RotorThickness
from app.facts.span import Span


class Wear(NamedTuple):
    """What is left to wear, below zero where too much is worn, and the least thickness; both in mm."""

    left_mm: Span
    least_mm: Span


def wear_of(thickness_mm: Span, rows: Sequence[RotorThickness]) -> Wear:
    """A rotor is of the thinnest kind that is no thinner when new; thicker than all is of the thickest.

    A reading that can be of two kinds gives what holds for both.
    """
    found = list(_by_kind(thickness_mm, sorted(rows, key=lambda row: row.new_mm.low)))
    left, least = found[0]
    for other in found[1:]:
        left, least = left.hull(other.left_mm), least.hull(other.least_mm)
    return Wear(left, least)


def _by_kind(thickness_mm: Span, rows: Sequence[RotorThickness]) -> Iterator[Wear]:
    above = 0
    for row in rows:
        upto = thickness_mm.high if row is rows[-1] else row.new_mm.low
        low, high = max(thickness_mm.low, above), min(thickness_mm.high, upto)
        if low <= high:
            yield Wear(Span(low, high) - row.least_mm, row.least_mm)
        above = row.new_mm.low + 1
