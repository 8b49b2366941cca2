"""Which parts go together: for each hub, its builds (what sits on the axle) and its drives (what feeds it).

Drawn up once for a catalogue. For each rule it also knows which distinct sets of parts the rule
will be asked about, so that a check costs the sum of the parts and not their product.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from itertools import product
from typing import TypeAlias

import numpy as np
from numpy.typing import NDArray

from app.catalogue.catalogue import Catalogue
from app.catalogue.hub_parts import Hub
from app.catalogue.part import Part
from app.rules.rule import PART_KINDS, Rule

Rows: TypeAlias = tuple[tuple[Part, ...], ...]
Index: TypeAlias = NDArray[np.intp]

BUILD_KINDS = PART_KINDS[:4]
DRIVE_KINDS = PART_KINDS[4:]


@dataclass(frozen=True)
class Sets:
    """The distinct sets of parts of some kinds, and for each row which of them it holds."""

    distinct: Rows
    index: Index


def distinct_sets(rows: Rows, columns: Sequence[int]) -> Sets:
    """What is left of the rows when only some columns are looked at."""
    places: dict[tuple[str, ...], int] = {}
    distinct: list[tuple[Part, ...]] = []
    index = np.empty(len(rows), dtype=np.intp)
    for at, row in enumerate(rows):
        parts = tuple(row[column] for column in columns)
        key = tuple(part.id for part in parts)
        if key not in places:
            places[key] = len(distinct)
            distinct.append(parts)
        index[at] = places[key]
    return Sets(tuple(distinct), index)


@dataclass(frozen=True)
class HubCombinations:
    """All builds and all drives of one hub; every build goes with every drive."""

    hub: Hub
    builds: Rows
    drives: Rows
    build_sets: dict[tuple[str, ...], Sets]
    drive_sets: dict[tuple[str, ...], Sets]

    @property
    def size(self) -> int:
        """How many combinations there are."""
        return len(self.builds) * len(self.drives)


def _builds(hub: Hub, catalogue: Catalogue) -> Iterator[tuple[Part, ...]]:
    freehubs = [each for each in catalogue.freehubs if hub.id in each.hubs]
    for axle_set in catalogue.axle_sets:
        if hub.id not in axle_set.hubs:
            continue
        arms = [arm for arm in catalogue.torque_arms if axle_set.id in arm.axle_sets]
        yield from ((hub, axle_set, arm, freehub) for arm, freehub in product(arms, freehubs))


def _drives(hub: Hub, catalogue: Catalogue) -> Iterable[tuple[Part, ...]]:
    windings = [each for each in catalogue.windings if each.hub == hub.id]
    return product(windings, catalogue.controllers, catalogue.packs, catalogue.sensors)


def _sets(rows: Rows, kinds: Sequence[str], wanted: Iterable[tuple[str, ...]]) -> dict[tuple[str, ...], Sets]:
    return {some: distinct_sets(rows, [kinds.index(kind) for kind in some]) for some in set(wanted)}


def build_side(rule: Rule) -> tuple[str, ...]:
    """The kinds of a rule that belong to the build."""
    return tuple(kind for kind in rule.part_kinds if kind in BUILD_KINDS)


def drive_side(rule: Rule) -> tuple[str, ...]:
    """The kinds of a rule that belong to the drive."""
    return tuple(kind for kind in rule.part_kinds if kind in DRIVE_KINDS)


@dataclass(frozen=True)
class Combinations:
    """Everything that a catalogue can be put together to, hub by hub, without those that lack a part."""

    catalogue: Catalogue
    hubs: tuple[HubCombinations, ...]

    @property
    def size(self) -> int:
        """How many combinations there are."""
        return sum(hub.size for hub in self.hubs)


def draw_up(catalogue: Catalogue, rules: Sequence[Rule]) -> Combinations:
    """All combinations of a catalogue, prepared for these rules."""
    hubs = []
    for hub in catalogue.hubs:
        builds, drives = tuple(_builds(hub, catalogue)), tuple(_drives(hub, catalogue))
        if builds and drives:
            build_sets = _sets(builds, BUILD_KINDS, map(build_side, rules))
            drive_sets = _sets(drives, DRIVE_KINDS, map(drive_side, rules))
            hubs.append(HubCombinations(hub, builds, drives, build_sets, drive_sets))
    return Combinations(catalogue, tuple(hubs))
