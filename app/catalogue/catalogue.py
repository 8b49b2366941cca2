"""A catalogue: all parts of a maker at one revision, frozen and sorted by id."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cached_property
from types import MappingProxyType

from app.catalogue.drive_parts import Controller, Pack, Sensor
from app.catalogue.hub_parts import AxleSet, Freehub, Hub, TorqueArm, Winding
from app.catalogue.part import Part
from app.catalogue.wheel_parts import Adapter, Rim, Spacer

# The file of a kind is its name in the plural; the order is that of the files and of the pages.
KINDS: Mapping[str, type[Part]] = MappingProxyType(
    {
        "hubs": Hub,
        "windings": Winding,
        "axle_sets": AxleSet,
        "torque_arms": TorqueArm,
        "freehubs": Freehub,
        "controllers": Controller,
        "packs": Pack,
        "sensors": Sensor,
        "rims": Rim,
        "adapters": Adapter,
        "spacers": Spacer,
    }
)


@dataclass(frozen=True)
class Catalogue:
    """Every tuple is sorted by id; `revision` is drawn from the content and `about` says whose it is."""

    hubs: tuple[Hub, ...]
    windings: tuple[Winding, ...]
    axle_sets: tuple[AxleSet, ...]
    torque_arms: tuple[TorqueArm, ...]
    freehubs: tuple[Freehub, ...]
    controllers: tuple[Controller, ...]
    packs: tuple[Pack, ...]
    sensors: tuple[Sensor, ...]
    rims: tuple[Rim, ...] = ()
    adapters: tuple[Adapter, ...] = ()
    spacers: tuple[Spacer, ...] = ()
    revision: str = ""
    about: str = ""

    def parts(self, plural: str) -> tuple[Part, ...]:
        """All parts of a kind, by the kind's file name."""
        found: tuple[Part, ...] = getattr(self, plural)
        return found

    @cached_property
    def is_empty(self) -> bool:
        """Whether there is no hub to check."""
        return not self.hubs
