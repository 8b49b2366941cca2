"""Counts, such as teeth or spoke holes, of which only a lowest and a highest value may be known."""

from __future__ import annotations

from collections.abc import Callable

from app.facts.span import THOUSAND, Span
from app.facts.truth import Truth


def whole_numbers(span: Span) -> range:
    """Every count that a span may be, widened outward to whole numbers where its ends are none."""
    return range(span.low // THOUSAND, -(-span.high // THOUSAND) + 1)


def for_every_count(span: Span, answer: Callable[[int], Truth]) -> Truth:
    """What holds whichever of its whole numbers the span is: yes for all, no for all, or unknown."""
    answers = {answer(count) for count in whole_numbers(span)}
    return answers.pop() if len(answers) == 1 else Truth.UNKNOWN


def same(reading: Span, value: Span) -> Truth:
    """Whether two sizes that must agree are the same: certain only where both are exact, or far apart."""
    if not reading.meets(value):
        return Truth.NO
    return Truth.YES if reading.is_exact and value.is_exact else Truth.UNKNOWN
