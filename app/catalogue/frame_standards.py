"""Rows about frames: axle standards, what a material bears, how far a rear end may be spread."""

from __future__ import annotations

from typing import Literal, TypeAlias

from pydantic import Field

from app.catalogue.dimension import Dimension
from app.catalogue.part import DropoutKind, Line, Material
from app.catalogue.standard_row import Row

Bears: TypeAlias = Literal["yes", "with_arm", "with_approval", "unknown", "never"]


class AxleStandard(Row):
    """A kind of rear end. Lip: innermost face of a dropout; floor: bottom of its socket, the hub's stop."""

    name: Line
    over_locknut_mm: Dimension
    floor_to_floor_mm: Dimension
    lip_to_lip_mm: Dimension
    socket_depth_mm: Dimension
    dropout_kinds: tuple[DropoutKind, ...] = Field(min_length=1)
    axle_end: Literal["quick_release", "bolted", "thru"]
    axle_diameter_mm: Dimension
    use: Line


class RotorPlane(Row):
    """Where the rotor's inner face is for a width over the locknuts: from the hub's end and from the lip."""

    over_locknut_mm: Dimension
    end_to_inner_face_mm: Dimension
    lip_to_inner_face_mm: Dimension


class Spread(Row):
    """How far a rear end may be pulled open or closed to take a hub, both sides together."""

    material: Material
    heat_treated: Literal["yes", "no", "any"] = "any"
    opens_mm: Dimension
    closes_mm: Dimension
    cold_set: Literal["by_a_frame_builder", "new_bridges", "specialist", "never"]


class MaterialRow(Row):
    """What a dropout or stay of a material bears of a motor's torque."""

    id: Material
    torque: Bears = Field(description="Torque of a motor in the dropout.")
    flatted_axle: Bears = Field(description="An axle with flats in the slots.")
    stay_clamp: Bears = Field(description="A clamp or band around the stay.")
    arm_from_nm: Dimension | None = Field(
        default=None, description="Peak torque from which an arm is needed."
    )
    two_arms_from_nm: Dimension | None = Field(default=None, description="The same, for a second arm.")
    flats_bear_mpa: Dimension | None = Field(
        default=None,
        description="Pressure of flats that the weakest dropout of it bears: 1.5 times its yield.",
    )
