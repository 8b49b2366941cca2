"""Everything on the axle of one kit in one bike, from end to end: what the section of the axle is drawn from.

Places run inboard in mm from the left dropout's innermost face, on to the right one and beyond it.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import NamedTuple

from app.catalogue.along_axle_checks import length_of
from app.catalogue.hub_parts import AxleSet, Freehub, Hub, TorqueArm
from app.catalogue.standards import Standards
from app.facts.answers import Answers
from app.facts.span import Span
from app.mechanics import axle_rows
from app.mechanics.axial_stack import OPEN_DROPOUT
from app.mechanics.axle_rows import HALF, AxialRow, Faces
from app.mechanics.cassette import stack_of
from app.mechanics.cogs_beside import chain_beside_cog_mm, cog_radius_mm
from app.mechanics.shell_profile import shell_face_of

BOTH_SIDES = 2


class OnTheAxle(NamedTuple):
    """The parts of a kit that sit on the axle."""

    hub: Hub
    axle_set: AxleSet
    torque_arm: TorqueArm
    freehub: Freehub


@dataclass(frozen=True, slots=True)
class AxialStack:
    """The rows by the place where they begin, left to right, and the faces that they stand on.

    middle_mm  the middle of the hub's width, which is that of the frame
    lacking    the part values by kind and name without which there would be more rows
    """

    rows: tuple[AxialRow, ...]
    faces: Faces
    middle_mm: Span
    lacking: tuple[tuple[str, str], ...]

    def of_kind(self, kind: str) -> tuple[AxialRow, ...]:
        """The rows of one kind, left to right."""
        return tuple(row for row in self.rows if row.kind == kind)


def stack_on(answers: Answers, parts: OnTheAxle, standards: Standards) -> AxialStack:
    """What lies where on the axle of this bike; rows are as wide as a fact that isn't known can be."""
    faces = faces_of(answers, parts.hub, parts.axle_set)
    rows = [*_left(answers, parts, faces), *_motor(parts, faces), *_right(answers, parts, faces, standards)]
    rows.sort(key=lambda row: (row.from_mm.low + row.from_mm.high, row.to_mm.low + row.to_mm.high))
    middle = (faces.left_floor_mm + faces.right_floor_mm).times(HALF)
    return AxialStack(tuple(rows), faces, middle, tuple(_lacking(parts)))


def socket_depth(answers: Answers, axle_set: AxleSet) -> Span:
    """From the lip to the floor of a dropout, in mm, for the kinds that bike and axle set share."""
    words = answers.words("dropout_kind") & set(axle_set.dropout_kinds) or set(axle_set.dropout_kinds)
    if "thru_axle" not in words:
        return OPEN_DROPOUT
    socket = answers.span("socket_depth_mm")
    return socket if words == {"thru_axle"} else socket.hull(OPEN_DROPOUT)


def faces_of(answers: Answers, hub: Hub, axle_set: AxleSet) -> Faces:
    """Floors, lips and the faces of the shell; the shell's are None where its maker is silent."""
    socket, width, shell = socket_depth(answers, axle_set), axle_set.over_locknut_mm, shell_face_of(axle_set)
    shell_left = None if shell is None else shell - socket
    if axle_set.right_stack:
        shell_right: Span | None = width - socket - length_of(axle_set.right_stack)
    elif shell_left is not None and hub.shell_width_mm is not None:
        shell_right = shell_left + hub.shell_width_mm
    else:
        shell_right = None
    return Faces(-socket, width - socket, width - socket.times(BOTH_SIDES), shell_left, shell_right)


def _left(answers: Answers, parts: OnTheAxle, faces: Faces) -> Iterator[AxialRow]:
    axle_set, disc = parts.axle_set, "disc" in answers.words("rear_brake")
    yield from axle_rows.ends(axle_set, answers.span("dropout_thickness_mm"), faces, is_left=True)
    yield from axle_rows.pieces(faces.left_floor_mm, axle_set.left_stack)
    yield axle_rows.arm(parts.torque_arm)
    if disc and parts.hub.rotor_fixing is not None:
        thickness, diameter = answers.span("rotor_thickness_mm"), answers.span("rotor_diameter_mm")
        yield from axle_rows.rotor(axle_set, faces, thickness, diameter)
    if disc:
        yield from _caliper(answers)


def _caliper(answers: Answers) -> Iterator[AxialRow]:
    """Both halves, as far as each has been measured; they stand where the bike's rotor runs now."""
    plane = answers.span("rotor_offset_mm")
    for name, fact, nearest in (
        ("outer half of the caliper", "caliper_outboard_depth_mm", "caliper_nearest_mm"),
        ("inner half of the caliper", "caliper_inboard_depth_mm", "caliper_inboard_nearest_mm"),
    ):
        if answers.is_known("rotor_offset_mm") and answers.is_known(fact):
            depth, inner = answers.span(fact), answers.span(nearest)
            outboard = fact.startswith("caliper_outboard")
            near, far = (plane - depth, plane) if outboard else (plane, plane + depth)
            yield AxialRow("caliper", name, near, far, inner_radius_mm=inner)


def _motor(parts: OnTheAxle, faces: Faces) -> Iterator[AxialRow]:
    yield from axle_rows.shell(parts.hub, faces)
    yield from axle_rows.flanges(parts.hub, faces)
    yield from axle_rows.cover(parts.hub, faces)


def _right(answers: Answers, parts: OnTheAxle, faces: Faces, standards: Standards) -> Iterator[AxialRow]:
    if faces.shell_right_mm is not None:
        yield from axle_rows.pieces(faces.shell_right_mm, parts.axle_set.right_stack)
    if "derailleur" in answers.words("drivetrain"):
        yield from _cogs(answers, parts, faces, standards)
    yield from axle_rows.ends(parts.axle_set, answers.span("dropout_thickness_mm"), faces, is_left=False)


def _cogs(answers: Answers, parts: OnTheAxle, faces: Faces, standards: Standards) -> Iterator[AxialRow]:
    speeds, rows = answers.span("cassette_speeds"), standards.cog_pitches
    edge = standards.limit("chain_over_rollers_mm").value
    largest, smallest = (cog_radius_mm(answers.span(name)) for name in ("largest_cog", "smallest_cog"))
    for row in axle_rows.cogs(parts.freehub, faces, stack_of(speeds, rows), largest):
        yield row
        yield axle_rows.chain(row, chain_beside_cog_mm(speeds, rows), smallest + edge)


def _lacking(parts: OnTheAxle) -> Iterator[tuple[str, str]]:
    if shell_face_of(parts.axle_set) is None:
        yield parts.axle_set.kind, "shell_face_mm"
    for part, names in (
        (parts.axle_set, ("left_stack", "right_stack")),
        (parts.hub, ("shell_width_mm", "shell_radius_mm", "flange_left_mm", "flange_thickness_mm")),
        (parts.freehub, ("largest_cog_face_mm", "smallest_cog_face_mm")),
    ):
        yield from ((part.kind, name) for name in names if not getattr(part, name))
