"""Three-valued truth: what is not known stays so unless the rest decides alone."""

from __future__ import annotations

from itertools import product

import pytest

from app.facts.truth import Truth

YES, NO, UNKNOWN = Truth.YES, Truth.NO, Truth.UNKNOWN
ALL = tuple(Truth)


def could_be(truth: Truth) -> set[bool]:
    return {YES: {True}, NO: {False}, UNKNOWN: {True, False}}[truth]


def truth_of(possible: set[bool]) -> Truth:
    return UNKNOWN if len(possible) > 1 else Truth.of(yes=True in possible)


@pytest.mark.parametrize(("one", "other"), list(product(ALL, ALL)))
def test_both_and_either_are_what_every_possible_case_gives(one: Truth, other: Truth) -> None:
    cases = list(product(could_be(one), could_be(other)))

    assert one & other is truth_of({a and b for a, b in cases})
    assert one | other is truth_of({a or b for a, b in cases})


@pytest.mark.parametrize("one", ALL)
def test_not_twice_is_where_it_began(one: Truth) -> None:
    assert ~~one is one
    assert ~one is truth_of({not case for case in could_be(one)})
