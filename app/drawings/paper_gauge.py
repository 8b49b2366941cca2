"""The paper gauge of a torque arm with one of its axle sets: the sheets that are held on a bike."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from app.catalogue.catalogue import Catalogue
from app.catalogue.hub_parts import AxleSet, Hub, TorqueArm
from app.drawings.gauge_of_arm import arm_sheets
from app.drawings.gauge_of_shell import shell_sheet
from app.drawings.gauge_paper import GaugeSheet
from app.mechanics.paper_gauge import gauge_name


@dataclass(frozen=True, slots=True)
class PaperGauge:
    """An arm, an axle set that it goes with, and the hub whose shell is beside it.

    name  the gauge's id and revision, as printed and as written beside an answer
    """

    arm: TorqueArm
    axle_set: AxleSet
    hub: Hub
    name: str

    def sheets(self) -> tuple[GaugeSheet, ...]:
        """The arm on one sheet or two, then the shell."""
        of_what = f"with axle set {self.axle_set.name}"
        return (
            *arm_sheets(self.arm, self.name, of_what),
            shell_sheet(self.hub, self.axle_set, self.name, of_what),
        )


def paper_gauges(catalogue: Catalogue) -> Iterator[PaperGauge]:
    """A gauge for every arm with every axle set it goes on, in the catalogue's order.

    Where an axle set serves several hubs, that of the largest shell.
    """
    sets = {axle_set.id: axle_set for axle_set in catalogue.axle_sets}
    hubs = {hub.id: hub for hub in catalogue.hubs}
    for arm in catalogue.torque_arms:
        for axle_set in (sets[each] for each in arm.axle_sets if each in sets):
            of_set = [hubs[each] for each in axle_set.hubs if each in hubs]
            if of_set:
                hub = max(of_set, key=_shell_radius)
                yield PaperGauge(arm, axle_set, hub, gauge_name(arm, hub, axle_set))


def find_gauge(catalogue: Catalogue, arm: str, axle_set: str) -> PaperGauge | None:
    """The gauge of an arm with an axle set by their ids, or None where they don't go together."""
    return next(
        (each for each in paper_gauges(catalogue) if (each.arm.id, each.axle_set.id) == (arm, axle_set)), None
    )


def gauge_names(catalogue: Catalogue) -> tuple[str, ...]:
    """The name of every gauge."""
    return tuple(gauge.name for gauge in paper_gauges(catalogue))


def _shell_radius(hub: Hub) -> int:
    return hub.shell_radius_mm.high if hub.shell_radius_mm else 0
