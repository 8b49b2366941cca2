"""The order of the combinations, and which of them are so alike that one stands for all."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from app.catalogue.part import Part
from app.report.judged import JudgedHub
from app.rules.outcome import Outcome


@dataclass(frozen=True)
class Ranked:
    """A group of like combinations: the parts of the best, and which other parts would do as well."""

    hub_at: int
    parts: tuple[Part, ...]
    also: tuple[tuple[Part, ...], ...]
    count: int
    blocks: Outcome
    cautions: Outcome
    margin: float | None


def _mass(rows: Sequence[Sequence[Part]]) -> NDArray[np.float64]:
    """Mass added by each row, in kg; a part whose maker gives no mass counts as nothing."""
    return np.array(
        [sum(part.mass_kg.high for part in row if part.mass_kg is not None) / 1000 for row in rows]
    )


def _severity(blocks: NDArray[np.int8]) -> NDArray[np.int8]:
    """0 fits, 1 can't tell, 2 doesn't fit."""
    return np.maximum(blocks.astype(np.int8) - int(Outcome.PASSED), 0).astype(np.int8)


@dataclass(frozen=True)
class Field:
    """All combinations of all hubs in one row, best first."""

    hub_of: NDArray[np.intp]
    place: NDArray[np.intp]
    severity: NDArray[np.int8]
    order: NDArray[np.intp]


def line_up(judged: Sequence[JudgedHub]) -> Field:
    """Fits first, then what can't be told, then what doesn't fit.

    Within those: wishes met, care needed, smallest relative margin, mass added, part ids.
    """
    flat = [each.both for each in judged]
    severity = np.concatenate([_severity(each.blocks).ravel() for each in flat])
    cautions = np.concatenate([each.cautions.ravel() == Outcome.FAILED for each in flat])
    wishes = np.concatenate([each.wishes.ravel() for each in flat])
    margin = np.concatenate([each.margin.ravel() for each in flat])
    mass = np.concatenate(
        [
            (_mass(each.combinations.builds)[:, None] + _mass(each.combinations.drives)[None, :]).ravel()
            for each in judged
        ]
    )
    hub_of = np.concatenate([np.full(each.both.blocks.size, at) for at, each in enumerate(judged)])
    place = np.concatenate([np.arange(each.both.blocks.size) for each in judged])
    # The last key is the first that counts; equal ones stay in the order of their ids.
    order = np.lexsort((mass, -np.nan_to_num(margin, posinf=1e9), cautions, wishes, severity))
    return Field(hub_of, place, severity, order)


def _parts_at(hub: JudgedHub, place: int) -> tuple[Part, ...]:
    build, drive = divmod(place, len(hub.combinations.drives))
    return (*hub.combinations.builds[build], *hub.combinations.drives[drive])


def _group(hub: JudgedHub, place: int) -> NDArray[np.intp]:
    """The places of all combinations with the same outcomes, axle set and torque arm as this one."""
    combinations = hub.combinations
    arm_sets = combinations.build_sets.get(("axle_set", "torque_arm"))
    build = place // len(combinations.drives)
    alike = hub.both.signature == hub.both.signature.ravel()[place]
    if arm_sets is not None:
        alike = alike & (arm_sets.index == arm_sets.index[build])[:, None]
    return np.flatnonzero(alike)


def _ranked(judged: Sequence[JudgedHub], hub_at: int, place: int, members: NDArray[np.intp]) -> Ranked:
    hub = judged[hub_at]
    rows = [_parts_at(hub, int(member)) for member in members[:200]]
    also = tuple(tuple(dict.fromkeys(column)) for column in zip(*rows, strict=True))
    margin = float(hub.both.margin.ravel()[place])
    return Ranked(
        hub_at,
        _parts_at(hub, place),
        also,
        len(members),
        Outcome(int(hub.both.blocks.ravel()[place])),
        Outcome(int(hub.both.cautions.ravel()[place])),
        margin if np.isfinite(margin) else None,
    )


def best_groups(judged: Sequence[JudgedHub], field: Field, most: int) -> list[Ranked]:
    """The best groups of like combinations, at most so many."""
    taken = np.zeros(field.order.size, dtype=bool)
    starts = np.concatenate(([0], np.cumsum([each.both.blocks.size for each in judged])))
    found: list[Ranked] = []
    for at in field.order:
        if len(found) == most:
            break
        if not taken[at]:
            hub_at, place = int(field.hub_of[at]), int(field.place[at])
            members = _group(judged[hub_at], place)
            taken[starts[hub_at] + members] = True
            found.append(_ranked(judged, hub_at, place, members))
    return found


def best_of_each_hub(judged: Sequence[JudgedHub], field: Field) -> list[Ranked]:
    """The best group of every hub, best hub first."""
    hubs, first = np.unique(field.hub_of[field.order], return_index=True)
    found = []
    for at in np.sort(first):
        hub_at, place = int(field.hub_of[field.order[at]]), int(field.place[field.order[at]])
        found.append(_ranked(judged, hub_at, place, _group(judged[hub_at], place)))
    assert len(found) == len(hubs)  # noqa: S101 - one for each hub, by construction
    return found
