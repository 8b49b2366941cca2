"""The caliper's inner half beside what a left flange holds: spoke heads, or spokes that leave it outside."""

from __future__ import annotations

from fractions import Fraction
from typing import NamedTuple

from app.facts.span import Span
from app.mechanics.corner_gap import corner_gap

HALF = Fraction(1, 2)


class Spokes(NamedTuple):
    """The left flange's holes, and what stands out of its outer face there.

    heads      on which side of the flange: out, in or both; heads inside leave their spokes outside
    radius_mm  from the axle to the holes
    face_mm    the flange's outer face, inboard of the shell's left face
    """

    heads: str
    radius_mm: Span
    face_mm: Span

    @classmethod
    def of(cls, *, heads: str, pcd_mm: Span, flange_mm: Span, thickness_mm: Span) -> Spokes:
        """From the circle of the holes, the place of the flange's middle, and its thickness."""
        return cls(heads, pcd_mm.times(HALF), flange_mm - thickness_mm.times(HALF))


def to_spokes(
    *, spokes: Spokes, spoke_mm: Span, room_mm: Span, rotor_diameter_mm: Span, beyond_rotor_mm: Span
) -> Span:
    """From the inner half to the spokes that lie outside the flange, in mm; below zero where they overlap.

    spoke_mm         thickness of a spoke
    room_mm          along the axle, from the caliper's innermost point to the shell's left face
    beyond_rotor_mm  how far the half reaches out beyond the rotor's edge: spokes begin at the flange's holes
    """
    outer_end = rotor_diameter_mm.times(HALF) + beyond_rotor_mm
    return corner_gap(across_mm=spokes.radius_mm - outer_end, along_mm=room_mm + spokes.face_mm - spoke_mm)


def to_heads(
    *, spokes: Spokes, head_height_mm: Span, head_radius_mm: Span, room_mm: Span, nearest_mm: Span
) -> Span:
    """From the inner half to the spoke heads on the flange, in mm; below zero where they overlap.

    nearest_mm  from the axle to the nearest point of the inner half
    """
    edge = spokes.radius_mm + head_radius_mm
    return corner_gap(across_mm=nearest_mm - edge, along_mm=room_mm + spokes.face_mm - head_height_mm)
