"""Which parts go together: for each hub, its builds (what sits on the axle) and its drives (what feeds it).

Drawn up once for a catalogue, together with what each rule will be asked about: the distinct sets of
the parts that it reads. So a check costs the sum of the parts and not their product.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import product
from typing import TypeAlias

import numpy as np
from numpy.typing import NDArray

from app.catalogue.catalogue import Catalogue
from app.catalogue.drive_parts import Controller, Pack
from app.catalogue.hub_parts import Hub
from app.catalogue.part import Part
from app.rules.rule import BUILD_KINDS, DRIVE_KINDS, Rule

Rows: TypeAlias = tuple[tuple[Part, ...], ...]
Keys: TypeAlias = tuple[tuple[str, ...], ...]
Index: TypeAlias = NDArray[np.intp]


def keys_of(rows: Rows) -> Keys:
    """The ids of each row's parts."""
    return tuple(tuple(part.id for part in row) for row in rows)


@dataclass(frozen=True)
class Sets:
    """The distinct sets of parts of some kinds, and for each row which of them it holds."""

    distinct: Rows
    keys: Keys
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
    return Sets(tuple(distinct), tuple(places), index)


@dataclass(frozen=True)
class OneSide:
    """Rules, by their place in the register, that are asked about the same sets of one side."""

    rules: tuple[int, ...]
    sets: Sets


@dataclass(frozen=True)
class BothSides:
    """A rule that reads both sides: every set of its build parts with every set of its drive parts."""

    rule: int
    builds: Sets
    drives: Sets
    parts: Rows
    keys: Keys


@dataclass(frozen=True)
class HubCombinations:
    """All builds and all drives of one hub; every build goes with every drive."""

    hub: Hub
    builds: Rows
    drives: Rows
    of_builds: tuple[OneSide, ...]
    of_drives: tuple[OneSide, ...]
    of_both: tuple[BothSides, ...]
    build_mass_kg: NDArray[np.float64]
    drive_mass_kg: NDArray[np.float64]

    @property
    def size(self) -> int:
        """How many combinations there are."""
        return len(self.builds) * len(self.drives)


def _builds(hub: Hub, catalogue: Catalogue) -> Iterator[tuple[Part, ...]]:
    freehubs = [each for each in catalogue.freehubs if hub.id in each.hubs]
    for axle_set in catalogue.axle_sets:
        if hub.id in axle_set.hubs:
            arms = [arm for arm in catalogue.torque_arms if axle_set.id in arm.axle_sets]
            yield from ((hub, axle_set, arm, freehub) for arm, freehub in product(arms, freehubs))


def _supplies(hub: Hub, catalogue: Catalogue) -> Iterator[tuple[Controller, Pack]]:
    """Every controller with every pack; one that is built into a hub or a pack goes with that alone."""
    built_in = {each.built_in_controller for each in catalogue.hubs}
    built_in |= {each.built_in_controller for each in catalogue.packs}
    for pack, controller in product(catalogue.packs, catalogue.controllers):
        inside = hub.built_in_controller or pack.built_in_controller
        if controller.id == inside or (inside is None and controller.id not in built_in):
            yield controller, pack


def _drives(hub: Hub, catalogue: Catalogue) -> Iterator[tuple[Part, ...]]:
    """A sensor that sits at a freehub is left out where the hub has no such freehub."""
    windings = [each for each in catalogue.windings if each.hub == hub.id]
    freehubs = {each.id for each in catalogue.freehubs if hub.id in each.hubs}
    sensors = [
        each for each in catalogue.sensors if not each.freehubs or freehubs.intersection(each.freehubs)
    ]
    supplies = tuple(_supplies(hub, catalogue))
    yield from (
        (winding, controller, pack, sensor)
        for winding, (controller, pack), sensor in product(windings, supplies, sensors)
    )


def _columns(kinds: Sequence[str], among: Sequence[str]) -> list[int]:
    return [among.index(kind) for kind in kinds]


def _one_side(rows: Rows, among: Sequence[str], rules: Sequence[tuple[int, Rule]]) -> tuple[OneSide, ...]:
    """Rules that read the same kinds of part share their sets."""
    by_kinds: dict[tuple[str, ...], list[int]] = defaultdict(list)
    for at, rule in rules:
        by_kinds[rule.part_kinds].append(at)
    return tuple(
        OneSide(tuple(places), distinct_sets(rows, _columns(kinds, among)))
        for kinds, places in by_kinds.items()
    )


def _both_sides(builds: Rows, drives: Rows, at: int, rule: Rule) -> BothSides:
    of_builds = distinct_sets(builds, _columns(rule.build_side, BUILD_KINDS))
    of_drives = distinct_sets(drives, _columns(rule.drive_side, DRIVE_KINDS))
    pairs = tuple((*build, *drive) for build in of_builds.distinct for drive in of_drives.distinct)
    return BothSides(at, of_builds, of_drives, pairs, keys_of(pairs))


def _mass_kg(rows: Rows) -> NDArray[np.float64]:
    """What each row adds to the bike; a part whose maker gives no mass counts as nothing."""
    return np.array(
        [sum(part.mass_kg.high for part in row if part.mass_kg is not None) / 1000 for row in rows]
    )


def _of_hub(hub: Hub, builds: Rows, drives: Rows, rules: Sequence[tuple[int, Rule]]) -> HubCombinations:
    both = [(at, rule) for at, rule in rules if rule.build_side and rule.drive_side]
    return HubCombinations(
        hub,
        builds,
        drives,
        _one_side(builds, BUILD_KINDS, [each for each in rules if not each[1].drive_side]),
        _one_side(
            drives, DRIVE_KINDS, [each for each in rules if each[1].drive_side and not each[1].build_side]
        ),
        tuple(_both_sides(builds, drives, at, rule) for at, rule in both),
        _mass_kg(builds),
        _mass_kg(drives),
    )


@dataclass(frozen=True)
class Combinations:
    """Everything that a catalogue can be put together to, hub by hub; hubs that lack a part are left out."""

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
            hubs.append(_of_hub(hub, builds, drives, tuple(enumerate(rules))))
    return Combinations(catalogue, tuple(hubs))
