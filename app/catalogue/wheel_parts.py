"""Parts that are chosen rather than combined: rims, adapters, spacers."""

from __future__ import annotations

from typing import ClassVar, Literal

from pydantic import Field

from app.catalogue.dimension import Dimension
from app.catalogue.part import Interface, Part


class Rim(Part):
    """A rim, for a bike whose own can't be laced to the hub."""

    kind: ClassVar[str] = "rim"

    bead_seat_mm: Dimension
    holes: int = Field(ge=12, le=48)
    inner_width_mm: Dimension
    erd_mm: Dimension | None = Field(default=None, description="To the nipple seats.")
    brake_track: bool = False


class Adapter(Part):
    """Something that joins two interfaces: plugs, or a rotor and a hub."""

    kind: ClassVar[str] = "adapter"

    joins: Literal["motor_plug", "pack_plug", "sensor_plug", "rotor"]
    of: str = Field(description="The interface on the bike's or the hub's side.")
    to: str = Field(description="The interface on the kit's side.")


class Spacer(Part):
    """A ring behind the cassette."""

    kind: ClassVar[str] = "spacer"

    thickness_mm: Dimension
    interfaces: tuple[Interface, ...] = Field(min_length=1)
