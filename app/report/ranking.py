"""The order of the combinations: groups of like ones, the best first, and the best of every hub."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from typing import TypeVar

import numpy as np
from numpy.typing import NDArray

from app.catalogue.part import Part
from app.report.judged import JudgedHub
from app.rules.outcome import Outcome

_Scalar = TypeVar("_Scalar", bound=np.generic)
# So many rows of a group are looked at for the names of what else would do.
MOST_NAMED = 60


@dataclass(frozen=True)
class Ranked:
    """A group of like combinations: the parts of the best, and by kind those of the others."""

    parts: tuple[Part, ...]
    also: tuple[tuple[Part, ...], ...]
    count: int


@dataclass(frozen=True)
class Field:
    """All groups of all hubs in one row, best first by `order`; `size` counts their combinations."""

    hub_of: NDArray[np.intp]
    place: NDArray[np.intp]
    size: NDArray[np.int64]
    severity: NDArray[np.int8]
    order: NDArray[np.intp]

    def count(self, severity: int) -> int:
        """How many combinations fit (0), can't be told (1) or don't fit (2)."""
        return int(self.size[self.severity == severity].sum())


def line_up(judged: Sequence[JudgedHub]) -> Field:
    """Fits first, then what can't be told, then what doesn't fit.

    Within those: rules that stop it, wishes met, care needed, smallest relative margin, mass added, part ids.
    """
    sides = [each.both for each in judged]
    severity = _row(np.maximum(side.blocks - int(Outcome.PASSED), 0).astype(np.int8) for side in sides)
    mass = _row(each.builds.mass_kg[:, None] + each.drives.mass_kg[None, :] for each in judged)
    size = _row(each.builds.size[:, None] * each.drives.size[None, :] for each in judged)
    margin = np.nan_to_num(_row(side.margin for side in sides), posinf=1e9)
    cautions = _row(side.cautions == Outcome.FAILED for side in sides)
    wishes, stops = _row(side.wishes for side in sides), _row(side.stops for side in sides)
    hub_of = np.concatenate([np.full(side.blocks.size, at) for at, side in enumerate(sides)])
    place = np.concatenate([np.arange(side.blocks.size) for side in sides])
    # The last key counts first; what is equal in all of them stays in the order of the ids.
    order = np.lexsort((mass, -margin, cautions, wishes, stops, severity))
    return Field(hub_of, place, size, severity, order)


def _row(arrays: Iterable[NDArray[_Scalar]]) -> NDArray[_Scalar]:
    return np.concatenate([array.ravel() for array in arrays])


def _ranked(hub: JudgedHub, place: int, count: int) -> Ranked:
    build_class, drive_class = divmod(place, len(hub.drives.best))
    combinations = hub.combinations
    parts = (
        *combinations.builds[int(hub.builds.best[build_class])],
        *combinations.drives[int(hub.drives.best[drive_class])],
    )
    builds = [combinations.builds[at] for at in _members(hub.builds.class_of, build_class)]
    drives = [combinations.drives[at] for at in _members(hub.drives.class_of, drive_class)]
    columns = (*zip(*builds, strict=True), *zip(*drives, strict=True))
    return Ranked(
        parts, tuple(tuple({part.id: part for part in column}.values()) for column in columns), count
    )


def _members(class_of: NDArray[np.intp], wanted: int) -> list[int]:
    return [int(at) for at in np.flatnonzero(class_of == wanted)[:MOST_NAMED]]


def best_groups(judged: Sequence[JudgedHub], field: Field, most: int) -> list[Ranked]:
    """The best groups of like combinations, at most so many."""
    return [_at(judged, field, int(at)) for at in field.order[:most]]


def best_of_each_hub(judged: Sequence[JudgedHub], field: Field) -> list[Ranked]:
    """The best group of every hub, best hub first."""
    _, first = np.unique(field.hub_of[field.order], return_index=True)
    return [_at(judged, field, int(field.order[at])) for at in np.sort(first)]


def _at(judged: Sequence[JudgedHub], field: Field, at: int) -> Ranked:
    return _ranked(judged[int(field.hub_of[at])], int(field.place[at]), int(field.size[at]))
