"""Counts and sizes that may not be certain."""

from __future__ import annotations

from app.facts.span import Span
from app.facts.truth import Truth
from app.mechanics.counts import for_every_count, same, whole_numbers


def even(count: int) -> Truth:
    return Truth.of(yes=count % 2 == 0)


def test_a_count_may_be_every_whole_number_of_its_span() -> None:
    assert list(whole_numbers(Span.between(8, 11))) == [8, 9, 10, 11]


def test_a_span_without_a_whole_number_is_widened_to_its_neighbours() -> None:
    assert list(whole_numbers(Span.between("8.2", "8.7"))) == [8, 9]


def test_what_holds_for_every_count_holds() -> None:
    assert for_every_count(Span.exactly(8), even) is Truth.YES
    assert for_every_count(Span.exactly(9), even) is Truth.NO


def test_what_holds_for_some_counts_is_unknown() -> None:
    assert for_every_count(Span.between(8, 9), even) is Truth.UNKNOWN


def test_two_exact_sizes_are_the_same_or_not() -> None:
    assert same(Span.exactly(622), Span.exactly(622)) is Truth.YES
    assert same(Span.exactly(622), Span.exactly(630)) is Truth.NO


def test_a_size_read_with_a_tape_may_be_the_same() -> None:
    assert same(Span.around(621, 2), Span.exactly(622)) is Truth.UNKNOWN
    assert same(Span.around(619, 2), Span.exactly(622)) is Truth.NO
