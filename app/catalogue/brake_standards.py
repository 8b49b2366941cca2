"""Rows about disc brakes: mounts, rotors, and the room that a caliper takes."""

from __future__ import annotations

from typing import Literal, TypeAlias

from pydantic import Field

from app.catalogue.dimension import Dimension
from app.catalogue.part import Line
from app.catalogue.standard_row import Row

Mount: TypeAlias = Literal["is", "post", "flat"]


class MountPattern(Row):
    """How a caliper is bolted to the frame. The lengths of a mount that isn't published stay empty.

    near_hole_mm, far_hole_mm   axle centre to the two holes (is)
    path_deg, path_start_mm, path_side_mm   the path on which the bolts move as the rotor grows (post):
                                its angle, the way along it for a 160 rotor, and the offset square to it
    """

    id: Mount
    bolt: Literal["M5", "M6"]
    bolt_pitch_mm: Dimension
    bolt_direction: Line
    near_hole_mm: Dimension | None = None
    far_hole_mm: Dimension | None = None
    path_deg: Dimension | None = None
    path_start_mm: Dimension | None = None
    path_side_mm: Dimension | None = None


class RotorSize(Row):
    """A rotor diameter in use."""

    diameter_mm: Dimension
    usual: bool = True


class RotorThickness(Row):
    """A rotor's thickness when new and the least it may be worn to; what the rotor itself says wins."""

    new_mm: Dimension
    least_mm: Dimension


class CaliperRoom(Row):
    """The room that a caliper takes on either side of the rotor's middle plane."""

    mount: Mount
    works_by: Literal["hydraulic", "hydraulic_4_piston", "cable"]
    inboard_mm: Dimension
    outboard_mm: Dimension
    length_mm: Dimension
    height_mm: Dimension | None = Field(default=None, description="Over the seat.")


class CaliperNearest(Row):
    """How near the nearest boss or ear of a mount comes to the axle centre, seen from the side."""

    mount: Mount
    rotor_mm: Dimension | None = Field(default=None, description="None: whatever the rotor.")
    nearest_mm: Dimension
