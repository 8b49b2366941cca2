"""What every part has, and the words that parts share with the bike."""

from __future__ import annotations

from typing import Annotated, Literal, TypeAlias

from pydantic import BaseModel, ConfigDict, Field, StringConstraints

from app.catalogue.dimension import Dimension

Slug: TypeAlias = Annotated[str, StringConstraints(pattern=r"^[a-z0-9]+(-[a-z0-9]+)*$", max_length=40)]
Line: TypeAlias = Annotated[
    str, StringConstraints(min_length=1, max_length=200, strip_whitespace=True, pattern=r"^[\P{C}]*$")
]
Note: TypeAlias = Annotated[
    str, StringConstraints(max_length=400, strip_whitespace=True, pattern=r"^[\P{C}]*$")
]

DropoutKind: TypeAlias = Literal["slotted_vertical", "slotted_horizontal", "track_end", "thru_axle"]
Material: TypeAlias = Literal["steel", "aluminium", "titanium", "carbon", "magnesium", "other"]
Interface: TypeAlias = Literal[
    "hg", "hg_short_7", "hg_road_11", "road_12_spline", "xd", "xdr", "micro_spline", "threaded_freewheel"
]
RotorFixing: TypeAlias = Literal["six_bolt", "center_lock"]
Section: TypeAlias = Literal["round", "oval", "rectangular", "shaped"]
SensorKind: TypeAlias = Literal["one_wire", "two_wire", "torque"]
Plug: TypeAlias = Literal["round_6", "round_9", "flat_3", "flat_5", "spade_2", "ring_2"]


class Part(BaseModel):
    """A part of a catalogue.

    A value that the maker hasn't given is None: a rule that needs it answers 'kit data missing'.
    """

    model_config = ConfigDict(frozen=True, extra="forbid")

    id: Slug = Field(description="Unique within its kind, never used for another part.")
    name: Line = Field(description="As it is printed.")
    note: Note = Field(default="", description="One or two sentences for the shop.")
    mass_kg: Dimension | None = Field(default=None, description="Mass in kg.")

    def __hash__(self) -> int:
        """By its id alone, which is quick: parts are looked up again and again."""
        return hash((type(self), self.id))
