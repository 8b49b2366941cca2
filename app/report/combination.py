"""One combination of parts with their types: what a kit is made of on one bike."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from app.catalogue.drive_parts import Controller, Pack, Sensor
from app.catalogue.hub_parts import AxleSet, Freehub, Hub, TorqueArm, Winding
from app.catalogue.part import Part


@dataclass(frozen=True, slots=True)
class Combination:
    """The parts of a build and of a drive, in the order of `PART_KINDS`."""

    hub: Hub
    axle_set: AxleSet
    torque_arm: TorqueArm
    freehub: Freehub
    winding: Winding
    controller: Controller
    pack: Pack
    sensor: Sensor

    @classmethod
    def of(cls, parts: Sequence[Part]) -> Combination:
        """The same parts, typed; they come in the order of `PART_KINDS`."""
        return cls(*parts)  # type: ignore[arg-type]
