"""The outcomes of all rules over all combinations, without ever drawing the combinations up.

Builds that no rule can tell apart are one class, and so are drives. Classes meet in a small table;
everything that is counted or ranked is counted or ranked there.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

import numpy as np

from app.report.combinations import BothSides, HubCombinations, OneSide, Sets
from app.report.tally import (
    Answers,
    Classes,
    Codes,
    Margins,
    Numbers,
    Side,
    as_arrays,
    count_in,
    fold,
    joined,
    meet,
    ranks,
)
from app.rules.evaluate import Bench


@dataclass(frozen=True)
class JudgedHub:
    """One hub's classes of builds (rows) and of drives (columns), and what the rules make of each pair."""

    combinations: HubCombinations
    builds: Classes
    drives: Classes
    both: Side


def judge_hub(hub: HubCombinations, benches: Sequence[Bench]) -> JudgedHub:
    """Ask each rule once for each distinct set of its parts, fold what is alike, and let the classes meet."""
    mixed = [_ask_both(asked, benches[asked.rule]) for asked in hub.of_both]
    builds = fold(
        [_ask_side(asked, benches) for asked in hub.of_builds],
        [
            _alike(answers.codes)[asked.builds.index]
            for asked, answers in zip(hub.of_both, mixed, strict=True)
        ],
        hub.build_mass_kg,
    )
    drives = fold(
        [_ask_side(asked, benches) for asked in hub.of_drives],
        [
            _alike(answers.codes.T)[asked.drives.index]
            for asked, answers in zip(hub.of_both, mixed, strict=True)
        ],
        hub.drive_mass_kg,
    )
    both = meet(builds, drives)
    for asked, answers in zip(hub.of_both, mixed, strict=True):
        at = np.ix_(asked.builds.index[builds.best], asked.drives.index[drives.best])
        both = count_in(both, replace(answers, codes=answers.codes[at], margins=answers.margins[at]))
    return JudgedHub(hub, builds, drives, both)


def _ask_side(asked: OneSide, benches: Sequence[Bench]) -> Answers:
    """The answers of the rules (rows) about each row of the side (columns)."""
    chosen = [benches[at] for at in asked.rules]
    return joined([_column(asked.sets, bench) for bench in chosen], [bench.rule for bench in chosen])


def _column(sets: Sets, bench: Bench) -> tuple[Codes, Margins]:
    """One rule's answers about each row of a side, kept for as long as the rule sees the same of a bike."""
    found: tuple[Codes, Margins] | None = bench.kept.get(id(sets))
    if found is None:
        codes, margins = as_arrays([*map(bench.result, sets.distinct, sets.keys)])
        found = bench.kept[id(sets)] = codes[sets.index], margins[sets.index]
    return found


def _ask_both(asked: BothSides, bench: Bench) -> Answers:
    """The answers of one rule about its sets of build parts (rows) and of drive parts (columns)."""
    found: tuple[Codes, Margins] | None = bench.kept.get(id(asked))
    if found is None:
        codes, margins = as_arrays([*map(bench.result, asked.parts, asked.keys)])
        shape = (len(asked.builds.distinct), len(asked.drives.distinct))
        found = bench.kept[id(asked)] = codes.reshape(shape), margins.reshape(shape)
    return Answers(*found, *ranks([bench.rule]))


def _alike(codes: np.ndarray[tuple[int, ...], np.dtype[np.int8]]) -> Numbers:
    """A number for each row, the same for rows that are the same throughout."""
    numbers: dict[bytes, int] = {}
    rows = [numbers.setdefault(row.tobytes(), len(numbers)) for row in np.ascontiguousarray(codes)]
    return np.array(rows, dtype=np.int64)
