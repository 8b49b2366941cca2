"""What a kit takes up along the axle: the motor's shell, what lies beside it, and where the cogs stand.

Lengths run along the axle: inboard from the left, and at the cogs outward from the shell's right face.
"""

from __future__ import annotations

from typing import Literal

from pydantic import BaseModel, ConfigDict, Field

from app.catalogue.dimension import Dimension
from app.catalogue.part import Line, Part


class ShellStep(BaseModel):
    """From this place on, inboard of its left face, the shell is so large; below zero is outboard."""

    model_config = ConfigDict(frozen=True, extra="forbid")

    radius_mm: Dimension
    inboard_mm: Dimension


class Piece(BaseModel):
    """One thing on the axle and how much of it it takes up."""

    model_config = ConfigDict(frozen=True, extra="forbid")

    what: Line
    mm: Dimension


class ShellPart(Part):
    """The motor's shell: the radius is that of its widest part, its places are counted from its left face."""

    shell_radius_mm: Dimension | None = None
    shell_width_mm: Dimension | None = Field(default=None, description="Left face to right face.")
    shell_profile: tuple[ShellStep, ...] = Field(
        default=(), description="Steps from the left inboard, the last the widest; none for a plain drum."
    )
    shell_clearance_mm: Dimension | None = Field(
        default=None, description="Running clearance the maker wants."
    )
    cover_radius_mm: Dimension | None = Field(
        default=None, description="From this radius on the drive-side cover stands out."
    )
    cover_face_mm: Dimension | None = Field(
        default=None, description="How far it stands out there from the shell's right face."
    )
    flange_left_pcd_mm: Dimension | None = None
    flange_right_pcd_mm: Dimension | None = None
    flange_left_mm: Dimension | None = Field(
        default=None, description="Shell's left face to the middle of the left flange."
    )
    flange_right_mm: Dimension | None = Field(
        default=None, description="Shell's left face to the middle of the right flange."
    )
    flange_thickness_mm: Dimension | None = None
    spoke_heads_left: Literal["out", "in", "both"] | None = Field(
        default=None,
        description="Side of the left flange with the spoke heads; heads in leave spokes outside.",
    )


class StackedPart(Part):
    """What lies on the axle on either side of the shell."""

    left_stack: tuple[Piece, ...] = Field(default=(), description="From the left end to the shell.")
    right_stack: tuple[Piece, ...] = Field(default=(), description="From the shell to the right end.")


class CogSeat(Part):
    """Where the cogs stand that a freehub body is made for, outward from the shell's right face."""

    largest_cog_face_mm: Dimension | None = Field(
        default=None, description="Shell's right face to the inner face of the largest cog."
    )
    smallest_cog_face_mm: Dimension | None = Field(
        default=None, description="Shell's right face to the outer face of the smallest cog."
    )
