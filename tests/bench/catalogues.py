"""Generates catalogues of a stated size out of plain parts."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from app.catalogue.catalogue import KINDS, Catalogue
from app.catalogue.drive_parts import Controller, Pack, Sensor
from app.rules.cases import read_plain_parts
from tests.demo import SEED_DATA


@dataclass(frozen=True)
class Counts:
    """How many parts of each kind; axle sets, freehubs and windings for each hub, arms for each axle set."""

    hubs: int
    axle_sets: int
    arms: int
    freehubs: int
    windings: int
    controllers: int
    packs: int
    sensors: int

    @property
    def combinations(self) -> int:
        """How many combinations these make."""
        builds = self.hubs * self.axle_sets * self.arms * self.freehubs
        return builds * self.windings * self.controllers * self.packs * self.sensors


def _made(plural: str, name: str, **changes: Any) -> Any:  # noqa: ANN401 - any part, any of its fields
    model = KINDS[plural]
    plain: Mapping[str, Any] = _PLAIN[getattr(model, "kind", "")]
    return model.model_validate({**plain, "id": name, "name": name.replace("-", " "), **changes})


_PLAIN = read_plain_parts((SEED_DATA / "cases" / "plain_parts.yaml").read_text("utf-8"))
# Every third axle set is for closed dropouts, so that some combinations fail whatever the bike.
_ENDS = (
    {"end": "quick_release", "dropout_kinds": ("slotted_vertical", "slotted_horizontal")},
    {"end": "bolt_on", "dropout_kinds": ("slotted_vertical", "track_end"), "flatted": True},
    {"end": "thru", "dropout_kinds": ("thru_axle",), "takes_low_mm": "141", "takes_high_mm": "143"},
)


def _axle_parts(counts: Counts, hub: str) -> tuple[list[Any], list[Any]]:
    axle_sets, arms = [], []
    for at in range(counts.axle_sets):
        name = f"{hub}-set-{at}"
        axle_sets.append(_made("axle_sets", name, hubs=(hub,), **_ENDS[at % len(_ENDS)]))
        for arm in range(counts.arms):
            reach = {"reach_from_mm": str(70 + 10 * arm), "reach_to_mm": str(140 + 10 * arm)}
            arms.append(_made("torque_arms", f"{name}-arm-{arm}", axle_sets=(name,), **reach))
    return axle_sets, arms


def _controller(at: int) -> Controller:
    made: Controller = _made("controllers", f"controller-{at}", battery_current_limit_a=str(14 + at))
    return made


def _pack(at: int) -> Pack:
    made: Pack = _made("packs", f"pack-{at}", continuous_a=str(16 + at), mass_kg=str(2 + at))
    return made


def _sensor(at: int, freehubs: tuple[str, ...]) -> Sensor:
    made: Sensor = _made("sensors", f"sensor-{at}", freehubs=freehubs, pulses_per_turn=str(12 + at))
    return made


def generated(counts: Counts) -> Catalogue:
    """A catalogue with so many parts, no two of a kind alike in what rules look at."""
    hubs, windings, axle_sets, arms, freehubs = [], [], [], [], []
    for at in range(counts.hubs):
        hub = f"hub-{at}"
        hubs.append(_made("hubs", hub, peak_torque_nm=str(30 + at), shell_radius_mm=str(90 + at)))
        windings += [
            _made("windings", f"{hub}-w{w}", hub=hub, kv_rpm_per_v=str(7 + w)) for w in range(counts.windings)
        ]
        some_sets, some_arms = _axle_parts(counts, hub)
        axle_sets += some_sets
        arms += some_arms
        freehubs += [
            _made("freehubs", f"{hub}-f{f}", hubs=(hub,), smallest_cog=str(10 + f % 3))
            for f in range(counts.freehubs)
        ]
    names = tuple(freehub.id for freehub in freehubs)
    return Catalogue(
        tuple(hubs), tuple(windings), tuple(axle_sets), tuple(arms), tuple(freehubs),
        tuple(_controller(at) for at in range(counts.controllers)),
        tuple(_pack(at) for at in range(counts.packs)),
        tuple(_sensor(at, names) for at in range(counts.sensors)),
        revision=f"generated {counts.combinations}",
    )  # fmt: skip


SMALL = Counts(hubs=5, axle_sets=3, arms=2, freehubs=2, windings=3, controllers=2, packs=5, sensors=2)
# Ten times as many by longer lists of the same kinds.
LARGE = Counts(hubs=5, axle_sets=5, arms=2, freehubs=3, windings=4, controllers=4, packs=5, sensors=3)
