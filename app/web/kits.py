"""The kits of a shop as the front door tells them: one hub in three lines."""

from __future__ import annotations

from dataclasses import dataclass

from app.catalogue.catalogue import Catalogue
from app.catalogue.dimension import plain
from app.catalogue.hub_parts import AxleSet, Hub
from app.facts.span import Span

MOTORS = {"direct_drive": "Direct drive", "geared": "Geared"}
ENDS = {"quick_release": "QR", "bolt_on": "bolt-on", "thru": "thru-axle"}


@dataclass(frozen=True, slots=True)
class Kit:
    """A hub: its name, its motor, the rear ends that it has an axle set for, and the maker's note."""

    name: str
    motor: str
    rear_ends: tuple[str, ...]
    note: str


def kits_of(catalogue: Catalogue | None) -> tuple[Kit, ...]:
    """The hubs of a catalogue; none where there is no catalogue yet."""
    return () if catalogue is None else tuple(_kit(hub, catalogue) for hub in catalogue.hubs)


def _kit(hub: Hub, catalogue: Catalogue) -> Kit:
    sets = [axle_set for axle_set in catalogue.axle_sets if hub.id in axle_set.hubs]
    sets.sort(key=lambda axle_set: axle_set.over_locknut_mm.low)
    motor = f"{MOTORS[hub.motor]}, {hub.spoke_holes} spokes"
    return Kit(hub.name, motor, tuple(dict.fromkeys(map(_rear_end, sets))), hub.note)


def _rear_end(axle_set: AxleSet) -> str:
    """As the trade calls it, such as "135 QR" or "142 × 12"."""
    width = _middle(axle_set.over_locknut_mm)
    if axle_set.thru_diameter_mm is not None:
        return f"{width} × {_middle(axle_set.thru_diameter_mm)}"
    return f"{width} {ENDS[axle_set.end]}"


def _middle(span: Span) -> str:
    return plain((span.low + span.high) // 2)
