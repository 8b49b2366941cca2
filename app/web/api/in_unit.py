"""Thousandths as the numbers of JSON: whole where they are whole."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TypeAlias

from app.facts.span import THOUSAND, Span

Number: TypeAlias = int | float


@dataclass(frozen=True, slots=True)
class Ends:
    """The smallest and the largest value, both included."""

    low: Number
    high: Number


def in_unit(thousandths: int) -> Number:
    """134600 is 134.6 and 135000 is 135."""
    whole, rest = divmod(thousandths, THOUSAND)
    return thousandths / THOUSAND if rest else whole


def ends_of(span: Span) -> Ends:
    """Both ends of a span in its unit."""
    return Ends(in_unit(span.low), in_unit(span.high))
