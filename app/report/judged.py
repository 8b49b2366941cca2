"""The outcomes of all rules over all combinations, as arrays joined only where builds meet drives."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import TypeAlias

import numpy as np
from numpy.typing import NDArray

from app.catalogue.part import Part
from app.report.combinations import HubCombinations, Sets, build_side, drive_side
from app.rules.evaluate import Bench
from app.rules.outcome import Outcome, Result, Weight, relative_margin

Codes: TypeAlias = NDArray[np.int8]

# One small number for outcome and weight, so that a rule's answers fit an array.
_CAUTION = 4


def code_of(result: Result) -> int:
    """Outcome and weight of a result in one number."""
    return int(result.outcome) + (_CAUTION if result.weight is Weight.CAUTIONS else 0)


@dataclass
class Tally:
    """What some rules add up to, over builds, over drives, or over both.

    blocks, cautions  the highest outcome among the rules of that weight
    margin            the smallest relative margin
    wishes            wishes that failed, a hundred each, and wishes that can't tell, one each
    signature         equal where all outcomes are equal
    """

    blocks: Codes
    cautions: Codes
    margin: NDArray[np.float64]
    wishes: NDArray[np.int16]
    signature: NDArray[np.int64]


@dataclass(frozen=True)
class Column:
    """One rule's answers over the rows of a side, or over both."""

    codes: Codes
    margins: NDArray[np.float64]
    of_wish: bool


def _highest(codes: Codes, *, cautions: bool) -> Codes:
    """The highest outcome over the first axis, among answers of one weight."""
    of_weight = (codes >= _CAUTION) == cautions
    highest: Codes = np.max(np.where(of_weight, codes & (_CAUTION - 1), 0), axis=0, initial=0).astype(np.int8)
    return highest


def _wishes(codes: Codes, columns: Sequence[Column]) -> NDArray[np.int16]:
    outcomes = codes[[column.of_wish for column in columns]] & (_CAUTION - 1)
    weight = np.where(outcomes == Outcome.FAILED, 100, outcomes == Outcome.CANT_TELL)
    total: NDArray[np.int16] = weight.sum(axis=0).astype(np.int16)
    return total


def _signature(codes: Codes) -> NDArray[np.int64]:
    """A number for each row of answers, the same for the same answers."""
    numbers: dict[bytes, int] = {}
    rows = [numbers.setdefault(row.tobytes(), len(numbers)) for row in np.ascontiguousarray(codes.T)]
    return np.array(rows, dtype=np.int64)


def tally_side(columns: Sequence[Column], rows: int) -> Tally:
    """The sum of rules that concern one side alone."""
    if not columns:
        zero = np.zeros(rows, dtype=np.int8)
        none = np.full(rows, np.inf)
        return Tally(zero, zero, none, zero.astype(np.int16), zero.astype(np.int64))
    codes = np.stack([column.codes for column in columns])
    margin = np.min(np.stack([column.margins for column in columns]), axis=0)
    blocks, cautions = _highest(codes, cautions=False), _highest(codes, cautions=True)
    return Tally(blocks, cautions, margin, _wishes(codes, columns), _signature(codes))


# A signature has room for this many more answers of eight values each before it must be renumbered.
_ROOM = 2**58


def add_mixed(tally: Tally, columns: Sequence[Column]) -> Tally:
    """Rules that concern both sides, counted into what the sides add up to."""
    if not columns:
        return tally
    codes = np.stack([column.codes for column in columns])
    signature = tally.signature
    for each in codes:
        if signature.max(initial=0) > _ROOM:
            signature = np.unique(signature, return_inverse=True)[1].reshape(signature.shape)
        signature = signature * (2 * _CAUTION) + each
    return Tally(
        np.maximum(tally.blocks, _highest(codes, cautions=False)),
        np.maximum(tally.cautions, _highest(codes, cautions=True)),
        np.minimum(tally.margin, np.min(np.stack([column.margins for column in columns]), axis=0)),
        tally.wishes + _wishes(codes, columns),
        signature,
    )


def _codes(results: Sequence[Result]) -> tuple[Codes, NDArray[np.float64]]:
    codes = np.fromiter((code_of(result) for result in results), dtype=np.int8, count=len(results))
    margins = np.fromiter((_margin(result) for result in results), dtype=np.float64, count=len(results))
    return codes, margins


def _margin(result: Result) -> float:
    margin = relative_margin(result)
    return np.inf if margin is None else margin


def _mixed_parts(bench: Bench, build: tuple[Part, ...], drive: tuple[Part, ...]) -> tuple[Part, ...]:
    by_kind = dict(zip((*build_side(bench.rule), *drive_side(bench.rule)), (*build, *drive), strict=True))
    return tuple(by_kind[kind] for kind in bench.rule.part_kinds)


@dataclass(frozen=True)
class JudgedHub:
    """One hub's combinations with their outcomes; rows are builds, columns are drives."""

    combinations: HubCombinations
    both: Tally


def _mixed(hub: HubCombinations, bench: Bench) -> Column:
    build_sets, drive_sets = hub.build_sets[build_side(bench.rule)], hub.drive_sets[drive_side(bench.rule)]
    pairs = [(build, drive) for build in build_sets.distinct for drive in drive_sets.distinct]
    codes, margins = _codes([bench.result(_mixed_parts(bench, build, drive)) for build, drive in pairs])
    shape = (len(build_sets.distinct), len(drive_sets.distinct))
    spread = np.ix_(build_sets.index, drive_sets.index)
    return Column(codes.reshape(shape)[spread], margins.reshape(shape)[spread], bench.rule.of_wish)


def _on_side(sets: Sets, bench: Bench) -> Column:
    codes, margins = _codes([bench.result(parts) for parts in sets.distinct])
    return Column(codes[sets.index], margins[sets.index], bench.rule.of_wish)


def judge_hub(hub: HubCombinations, benches: Sequence[Bench]) -> JudgedHub:
    """Ask each rule once for each distinct set of its parts, then spread the answers."""
    on_builds, on_drives, mixed = [], [], []
    for bench in benches:
        build_kinds, drive_kinds = build_side(bench.rule), drive_side(bench.rule)
        if build_kinds and drive_kinds:
            mixed.append(_mixed(hub, bench))
        elif drive_kinds:
            on_drives.append(_on_side(hub.drive_sets[drive_kinds], bench))
        else:
            on_builds.append(_on_side(hub.build_sets[build_kinds], bench))
    sides = _meet(tally_side(on_builds, len(hub.builds)), tally_side(on_drives, len(hub.drives)))
    return JudgedHub(hub, add_mixed(sides, mixed))


def _meet(on_builds: Tally, on_drives: Tally) -> Tally:
    rows, columns = np.s_[:, None], np.s_[None, :]
    drives = int(on_drives.signature.max(initial=0)) + 1
    return Tally(
        np.maximum(on_builds.blocks[rows], on_drives.blocks[columns]),
        np.maximum(on_builds.cautions[rows], on_drives.cautions[columns]),
        np.minimum(on_builds.margin[rows], on_drives.margin[columns]),
        on_builds.wishes[rows] + on_drives.wishes[columns],
        on_builds.signature[rows] * drives + on_drives.signature[columns],
    )
