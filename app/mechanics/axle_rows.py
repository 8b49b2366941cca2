"""What each part puts on the axle, as rows from where to where; a part whose maker is silent puts nothing.

Places run inboard in mm from the left dropout's innermost face, on to the right one and beyond it.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction
from typing import Literal, NamedTuple, TypeAlias

from app.catalogue.along_axle import Piece
from app.catalogue.hub_parts import AxleSet, Freehub, Hub, TorqueArm
from app.facts.span import Span
from app.mechanics.shell_profile import steps_of

HALF = Fraction(1, 2)
LIP = Span(0, 0)

Kind: TypeAlias = Literal[
    "nut",
    "washers",
    "dropout",
    "arm",
    "piece",
    "rotor",
    "caliper",
    "flange",
    "shell",
    "cover",
    "cogs",
    "chain",
]


@dataclass(frozen=True, slots=True)
class AxialRow:
    """One thing on the axle: where it begins on the left and ends on the right, and its radii where known.

    name  as it may be printed; pieces have the names that their maker gave them
    """

    kind: Kind
    name: str
    from_mm: Span
    to_mm: Span
    outer_radius_mm: Span | None = None
    inner_radius_mm: Span | None = None


class Faces(NamedTuple):
    """The faces that the rows stand on: floors and lips of both dropouts, and both faces of the shell."""

    left_floor_mm: Span
    right_floor_mm: Span
    right_lip_mm: Span
    shell_left_mm: Span | None
    shell_right_mm: Span | None


def ends(axle_set: AxleSet, thickness_mm: Span, faces: Faces, *, is_left: bool) -> Iterator[AxialRow]:
    """Dropout, washers and nut of one side, from the wheel outward."""
    lip, outward = (LIP, -1) if is_left else (faces.right_lip_mm, 1)
    lengths: tuple[tuple[Kind, Span | None], ...] = (
        ("dropout", thickness_mm),
        ("washers", axle_set.washers_mm),
        ("nut", axle_set.nut_height_mm if axle_set.end == "bolt_on" else None),
    )
    for kind, length in lengths:
        if length is not None:
            outer = lip + length.times(outward)
            near, far = (outer, lip) if is_left else (lip, outer)
            yield AxialRow(kind, kind, near, far)
            lip = outer


def pieces(start_mm: Span, listed: Sequence[Piece]) -> Iterator[AxialRow]:
    """The pieces of one side, one beside the other."""
    for piece in listed:
        end = start_mm + piece.mm
        yield AxialRow("piece", piece.what, start_mm, end)
        start_mm = end


def arm(torque_arm: TorqueArm) -> AxialRow:
    """The torque arm, by its own faces."""
    return AxialRow(
        "arm", torque_arm.name, torque_arm.outer_face_mm, torque_arm.inner_face_mm, torque_arm.disc_radius_mm
    )


def rotor(axle_set: AxleSet, faces: Faces, thickness_mm: Span, diameter_mm: Span) -> Iterator[AxialRow]:
    """The rotor on its seat; nothing on an axle set without one."""
    if axle_set.rotor_seat_mm is not None:
        seat = faces.left_floor_mm + axle_set.rotor_seat_mm
        yield AxialRow("rotor", "rotor", seat - thickness_mm, seat, diameter_mm.times(HALF))


def shell(hub: Hub, faces: Faces) -> Iterator[AxialRow]:
    """Each step of the shell, from where it begins to the shell's right face."""
    if faces.shell_left_mm is not None and faces.shell_right_mm is not None:
        for step in steps_of(hub):
            start = faces.shell_left_mm + step.inboard_mm
            yield AxialRow("shell", "motor shell", start, faces.shell_right_mm, step.radius_mm)


def flanges(hub: Hub, faces: Faces) -> Iterator[AxialRow]:
    """Both flanges, out to the circle of their holes."""
    if faces.shell_left_mm is None or hub.flange_thickness_mm is None:
        return
    half = hub.flange_thickness_mm.times(HALF)
    for name, place, pcd in (
        ("left flange", hub.flange_left_mm, hub.flange_left_pcd_mm),
        ("right flange", hub.flange_right_mm, hub.flange_right_pcd_mm),
    ):
        if place is not None:
            middle = faces.shell_left_mm + place
            radius = None if pcd is None else pcd.times(HALF)
            yield AxialRow("flange", name, middle - half, middle + half, radius)


def cover(hub: Hub, faces: Faces) -> Iterator[AxialRow]:
    """The rim of the drive-side cover, from the radius where it begins to the edge of the shell."""
    if faces.shell_right_mm is not None and hub.cover_face_mm is not None:
        rim = faces.shell_right_mm + hub.cover_face_mm
        yield AxialRow(
            "cover", "rim of the cover", faces.shell_right_mm, rim, hub.shell_radius_mm, hub.cover_radius_mm
        )


def cogs(freehub: Freehub, faces: Faces, stack_mm: Span, largest_mm: Span) -> Iterator[AxialRow]:
    """The bike's cogs: up against the outer end of a body with splines, the inner end of a thread."""
    inner, outer, right = freehub.largest_cog_face_mm, freehub.smallest_cog_face_mm, faces.shell_right_mm
    if inner is None or outer is None or right is None:
        return
    if freehub.interface == "threaded_freewheel":
        yield AxialRow("cogs", "cogs", right + inner, right + inner + stack_mm, largest_mm)
    else:
        yield AxialRow("cogs", "cogs", right + outer - stack_mm, right + outer, largest_mm)


def chain(cogs_row: AxialRow, beside_mm: Span, radius_mm: Span) -> AxialRow:
    """What of the chain stands out beyond the smallest cog."""
    return AxialRow("chain", "chain", cogs_row.to_mm, cogs_row.to_mm + beside_mm, radius_mm)
