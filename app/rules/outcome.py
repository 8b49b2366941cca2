"""How an outcome is read off a check, and how outcomes are put together."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from enum import Enum, IntEnum
from types import MappingProxyType
from typing import NamedTuple

from app.facts.truth import Truth
from app.rules.check import Check, Given, Limit, Missing


class Outcome(IntEnum):
    """The four outcomes of the W3C's Evaluation and Report Language; the number is the precedence."""

    INAPPLICABLE = 0
    PASSED = 1
    CANT_TELL = 2
    FAILED = 3

    @property
    def earl(self) -> str:
        """The outcome's name in the language it comes from."""
        return ("inapplicable", "passed", "cantTell", "failed")[self]


# Added to an outcome's number where the rule is to know and can't stop a fit.
CAUTION = 4


class Weight(Enum):
    """Whether a rule can stop a fit or is to know."""

    BLOCKS = "B"
    CAUTIONS = "C"


NO_WORDS: Mapping[str, str] = MappingProxyType({})
_OF_TRUTH = {Truth.YES: Outcome.PASSED, Truth.NO: Outcome.FAILED, Truth.UNKNOWN: Outcome.CANT_TELL}


def _against_low(check: Check, limit: Limit) -> Outcome:
    reading = check.reading
    assert reading is not None  # noqa: S101 - a check with limits has a reading; see Check
    edge = 1 if limit.excluded else 0
    if reading.low >= limit.value.high + edge:
        return Outcome.PASSED
    return Outcome.FAILED if reading.high < limit.value.low + edge else Outcome.CANT_TELL


def _against_high(check: Check, limit: Limit) -> Outcome:
    reading = check.reading
    assert reading is not None  # noqa: S101 - a check with limits has a reading; see Check
    edge = 1 if limit.excluded else 0
    if reading.high <= limit.value.low - edge:
        return Outcome.PASSED
    return Outcome.FAILED if reading.low > limit.value.high - edge else Outcome.CANT_TELL


def sides(check: Check) -> tuple[tuple[Limit, Outcome], ...]:
    """Each limit of a check with what the reading makes of it."""
    found: list[tuple[Limit, Outcome]] = []
    if check.low is not None:
        found.append((check.low, _against_low(check, check.low)))
    if check.high is not None:
        found.append((check.high, _against_high(check, check.high)))
    return tuple(found)


class Result(NamedTuple):
    """What a rule makes of one set of parts.

    words  the words that were tried of choices not yet settled, for the answer that stands here
    tried  those choices; empty where all were known
    """

    outcome: Outcome
    weight: Weight
    given: Given
    words: Mapping[str, str] = NO_WORDS
    tried: tuple[str, ...] = ()

    @property
    def code(self) -> int:
        """Outcome and weight in one small number, for arrays."""
        return self.outcome if self.weight is Weight.BLOCKS else self.outcome + CAUTION

    @property
    def relative(self) -> float:
        """The relative margin, infinite where there is none."""
        margin = relative_margin(self)
        return math.inf if margin is None else margin


def decide(given: Given, weight: Weight) -> Result:
    """The outcome of one answer, and its weight: what rests on a weak source can only caution."""
    if isinstance(given, Check):
        return (
            _of_truth(given, given.truth, weight) if given.truth is not None else _of_numbers(given, weight)
        )
    return Result(Outcome.CANT_TELL if isinstance(given, Missing) else Outcome.INAPPLICABLE, weight, given)


def _of_truth(check: Check, truth: Truth, weight: Weight) -> Result:
    return Result(_OF_TRUTH[truth], weight if check.provenance.may_stop_a_fit else Weight.CAUTIONS, check)


def _of_numbers(check: Check, weight: Weight) -> Result:
    """The worse of both sides; it can stop a fit only if a limit on a side that bad may."""
    low, high = check.low, check.high
    below = Outcome.INAPPLICABLE if low is None else _against_low(check, low)
    above = Outcome.INAPPLICABLE if high is None else _against_high(check, high)
    outcome = max(below, above)
    if weight is Weight.BLOCKS and not (
        (low is not None and below is outcome and low.provenance.may_stop_a_fit)
        or (high is not None and above is outcome and high.provenance.may_stop_a_fit)
    ):
        weight = Weight.CAUTIONS
    return Result(outcome, weight, check)


def join(results: Sequence[Result], tried: tuple[str, ...]) -> Result:
    """One result for a choice whose words gave several: what holds whatever the word is.

    Passed and 'does not apply' together are passed; any other mixture can't tell.
    """
    heaviest = max(results, key=lambda each: (each.outcome, each.weight is Weight.BLOCKS))
    outcomes = {each.outcome for each in results}
    mixed = len(outcomes - {Outcome.INAPPLICABLE, Outcome.PASSED}) > 0 and len(outcomes) > 1
    outcome = Outcome.CANT_TELL if mixed else heaviest.outcome
    unsettled = [each for each in results if each.outcome in {Outcome.CANT_TELL, Outcome.FAILED}]
    blocks = any(each.weight is Weight.BLOCKS for each in unsettled or results)
    also = tuple(dict.fromkeys((*tried, *(name for each in results for name in each.tried))))
    return Result(outcome, Weight.BLOCKS if blocks else Weight.CAUTIONS, heaviest.given, heaviest.words, also)


def margin(result: Result) -> int | None:
    """Thousandths in hand at worst where it passed, short at best, below zero, where it failed.

    None for an answer without numbers.
    """
    given = result.given
    if not isinstance(given, Check) or given.reading is None:
        return None
    low, high = given.low, given.high
    if result.outcome is Outcome.FAILED:
        room = [given.reading.high - low.value.low] if low else []
        room += [high.value.high - given.reading.low] if high else []
    else:
        room = [given.reading.low - low.value.high] if low else []
        room += [high.value.low - given.reading.high] if high else []
    return min(room)


def relative_margin(result: Result) -> float | None:
    """Margin over the width of the limits; None for one limit alone, for choices, and unless it passed."""
    given = result.given
    if (
        result.outcome is not Outcome.PASSED
        or not isinstance(given, Check)
        or not given.low
        or not given.high
    ):
        return None
    width = given.high.value.low - given.low.value.high
    in_hand = margin(result)
    return None if width <= 0 or in_hand is None else in_hand / width
