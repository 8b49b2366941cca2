"""Adds outcomes up over the builds or the drives of a hub, and folds those that no rule can tell apart."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import TypeAlias

import numpy as np
from numpy.typing import NDArray

from app.rules.outcome import CAUTION, Outcome, Result
from app.rules.rule import Rule

Codes: TypeAlias = NDArray[np.int8]
Margins: TypeAlias = NDArray[np.float64]
Numbers: TypeAlias = NDArray[np.int64]
Index: TypeAlias = NDArray[np.intp]

# What a row's number, and the number of a set among a rule's sets, stay below.
_ALIKE = 2**14
# So many answers of eight values each fit into one number beside that.
_DIGITS = 16
_PLACES = 8 ** np.arange(_DIGITS, dtype=np.int64)


@dataclass(frozen=True)
class Answers:
    """The answers of some rules as arrays: outcome and weight in one number, and the relative margin.

    of_wish, stops_as  of each rule: whether it is about a wish, and how many rules it counts for
    """

    codes: Codes
    margins: Margins
    of_wish: NDArray[np.bool_]
    stops_as: Numbers


def as_arrays(results: Sequence[Result]) -> tuple[Codes, Margins]:
    """Codes and relative margins of one rule's results."""
    codes = np.array([result.code for result in results], dtype=np.int8)
    return codes, np.array([result.relative for result in results])


def ranks(rules: Sequence[Rule]) -> tuple[NDArray[np.bool_], Numbers]:
    """What each rule is to the order: about a wish or not, and for how many rules it counts."""
    of_wish = np.array([rule.of_wish for rule in rules], dtype=bool)
    return of_wish, np.array([rule.stops_as for rule in rules], dtype=np.int64)


def joined(columns: Sequence[tuple[Codes, Margins]], rules: Sequence[Rule]) -> Answers:
    """The answers of several rules about the same rows."""
    codes = np.stack([codes for codes, _ in columns])
    return Answers(codes, np.stack([margins for _, margins in columns]), *ranks(rules))


@dataclass(frozen=True)
class Side:
    """What rules add up to: over rows of one side, or over the table of both.

    blocks, cautions  the highest outcome among rules of that weight
    stops             how many rules stop it, those that nothing helps against counted several times
    margin            the smallest relative margin, infinite where there is none
    wishes            a hundred for each wish that failed, one for each that can't be told
    """

    blocks: Codes
    cautions: Codes
    stops: Numbers
    margin: Margins
    wishes: Numbers


@dataclass(frozen=True)
class Classes:
    """Rows that are alike for every rule, as one: its best row, all its rows, and what the rules add up to.

    Best is the row with most margin, then the lightest, then the first by id.
    """

    best: Index
    class_of: Index
    size: Numbers
    mass_kg: Margins
    side: Side


def _split(codes: Codes) -> tuple[Codes, Codes]:
    cautions = codes >= CAUTION
    outcomes = codes & (CAUTION - 1)
    return np.where(cautions, 0, outcomes).astype(np.int8), np.where(cautions, outcomes, 0).astype(np.int8)


def _wishes(outcomes: Codes) -> Numbers:
    return np.where(outcomes == Outcome.FAILED, 100, outcomes == Outcome.CANT_TELL).astype(np.int64)


def _sum(answers: Answers) -> Side:
    blocks, cautions = _split(answers.codes)
    wished = answers.codes[answers.of_wish] & (CAUTION - 1)
    return Side(
        blocks.max(axis=0, initial=0),
        cautions.max(axis=0, initial=0),
        answers.stops_as @ (blocks == Outcome.FAILED),
        answers.margins.min(axis=0, initial=np.inf),
        _wishes(wished).sum(axis=0),
    )


def _key(codes: Codes, alike: Sequence[Numbers]) -> Numbers:
    """A number for each column of answers, the same for columns that no rule can tell apart.

    Answers are digits of one number, so many at a time as it holds, and the number is then made small again.
    """
    key = np.zeros(codes.shape[1], dtype=np.int64)
    for start in range(0, len(codes), _DIGITS):
        digits = codes[start : start + _DIGITS].astype(np.int64)
        key = _renumbered(key + (_PLACES[: len(digits)] @ digits) * _ALIKE)
    for each in alike:
        key = _renumbered(key * _ALIKE + each)
    return key


def _renumbered(key: Numbers) -> Numbers:
    return np.unique(key, return_inverse=True)[1].astype(np.int64)


def _join(answers: Sequence[Answers], rows: int) -> Answers:
    if not answers:
        none = np.zeros(0, dtype=np.int64)
        return Answers(np.zeros((0, rows), dtype=np.int8), np.zeros((0, rows)), none.astype(bool), none)
    return Answers(
        np.concatenate([each.codes for each in answers]),
        np.concatenate([each.margins for each in answers]),
        np.concatenate([each.of_wish for each in answers]),
        np.concatenate([each.stops_as for each in answers]),
    )


def fold(answers: Sequence[Answers], alike: Sequence[Numbers], mass_kg: Margins) -> Classes:
    """Put rows together that have the same answer of every rule of their side, and meet the other side alike.

    alike  for each rule that reads both sides, a number for each row: the same where its answers are
    """
    joined = _join(answers, len(mass_kg))
    whole = _sum(joined)
    _, class_of = np.unique(_key(joined.codes, alike), return_inverse=True)
    order = np.lexsort((mass_kg, -np.nan_to_num(whole.margin, posinf=1e9)))
    _, first = np.unique(class_of[order], return_index=True)
    best = order[first]
    side = Side(
        whole.blocks[best], whole.cautions[best], whole.stops[best], whole.margin[best], whole.wishes[best]
    )
    return Classes(best, class_of, np.bincount(class_of).astype(np.int64), mass_kg[best], side)


def meet(builds: Classes, drives: Classes) -> Side:
    """The table of every class of builds with every class of drives."""
    row, column = np.s_[:, None], np.s_[None, :]
    left, right = builds.side, drives.side
    return Side(
        np.maximum(left.blocks[row], right.blocks[column]),
        np.maximum(left.cautions[row], right.cautions[column]),
        left.stops[row] + right.stops[column],
        np.minimum(left.margin[row], right.margin[column]),
        left.wishes[row] + right.wishes[column],
    )


def count_in(both: Side, answers: Answers) -> Side:
    """The table with one more rule, which read both sides; its answers have the table's shape."""
    blocks, cautions = _split(answers.codes)
    wished = _wishes(answers.codes & (CAUTION - 1)) if answers.of_wish[0] else 0
    return Side(
        np.maximum(both.blocks, blocks),
        np.maximum(both.cautions, cautions),
        both.stops + answers.stops_as[0] * (blocks == Outcome.FAILED),
        np.minimum(both.margin, answers.margins),
        both.wishes + wished,
    )
