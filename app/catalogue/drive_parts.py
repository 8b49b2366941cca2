"""The electrical side of a kit: controllers, packs, sensors."""

from __future__ import annotations

from typing import Annotated, ClassVar, Literal, TypeAlias

from pydantic import BeforeValidator, Field

from app.catalogue.dimension import Dimension
from app.catalogue.part import Part, Plug, SensorKind, Slug

# One edge, both edges, or every edge of two wires; from text it comes as a digit.
EdgesPerPulse: TypeAlias = Annotated[
    Literal[1, 2, 4], BeforeValidator(lambda value: {"1": 1, "2": 2, "4": 4}.get(str(value), value))
]


class Controller(Part):
    """A motor controller."""

    kind: ClassVar[str] = "controller"

    full_voltage_limit_v: Dimension = Field(description="Highest pack voltage, fully charged.")
    battery_current_limit_a: Dimension
    phase_current_limit_a: Dimension
    phase_current_kind: Literal["peak", "six_step", "rms"] | None = None
    rated_power_w: Dimension | None = Field(default=None, description="Continuous, as marked.")
    reads: tuple[SensorKind, ...] | None = Field(
        default=None, description="Pedal sensors it understands; an empty list for one that takes none."
    )
    edges_per_pulse: EdgesPerPulse | None = Field(default=None, description="Edges it counts for each pulse.")
    regenerates: bool = False
    motor_plug: Plug | None = None
    pack_plug: Plug | None = None
    sensor_plug: Plug | None = None
    bar_lead_mm: Dimension | None = Field(default=None, description="Controller to handlebar.")
    speed_limit_kmh: Dimension | None = Field(default=None, description="Highest limit that can be set.")
    throttle: bool = False


class Pack(Part):
    """A battery pack."""

    kind: ClassVar[str] = "pack"

    nominal_v: Dimension
    full_v: Dimension
    capacity_ah: Dimension
    continuous_a: Dimension
    resistance_ohm: Dimension | None = None
    plug: Plug | None = None
    built_in_controller: Slug | None = Field(default=None, description="The controller inside its holder.")


class Sensor(Part):
    """A pedal sensor."""

    kind: ClassVar[str] = "sensor"

    senses: SensorKind
    sits: Literal["freehub", "bottom_bracket"] = "freehub"
    freehubs: tuple[Slug, ...] = Field(default=(), description="Freehubs it mounts on.")
    pulses_per_turn: int | None = Field(
        default=None,
        ge=1,
        description="Of the freehub body, or of the crank at the bottom bracket; each wire.",
    )
    plug: Plug | None = None
    lead_mm: Dimension | None = None
