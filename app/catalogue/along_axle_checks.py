"""What must agree along the axle: steps that grow, pieces that add up, cogs that stand in their order."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from itertools import pairwise

from app.catalogue.along_axle import CogSeat, Piece, ShellPart
from app.catalogue.dimension import plain
from app.catalogue.fault import Fault
from app.catalogue.hub_parts import AxleSet, Hub
from app.catalogue.part import Part
from app.facts.span import Span

# A field of a part and what is wrong with it.
FieldFault = tuple[str, str]

NOTHING = Span(0, 0)


def length_of(pieces: Sequence[Piece]) -> Span:
    """What several pieces take up together, in mm."""
    return sum((piece.mm for piece in pieces), start=NOTHING)


def _read_out(span: Span) -> str:
    return plain(span.low) if span.is_exact else f"{plain(span.low)} to {plain(span.high)}"


def shell_faults(part: ShellPart) -> Iterator[FieldFault]:
    """A profile that shrinks inboard, that ends at another radius, and flanges that lie off the shell."""
    for outer, inner in pairwise(part.shell_profile):
        if inner.inboard_mm.low <= outer.inboard_mm.low or inner.radius_mm.low <= outer.radius_mm.low:
            yield "shell_profile", "must grow from step to step, inboard and in radius"
    if part.shell_profile and part.shell_radius_mm != part.shell_profile[-1].radius_mm:
        yield "shell_radius_mm", "must be the radius of the last step of shell_profile"
    if (part.cover_radius_mm is None) != (part.cover_face_mm is None):
        yield "cover_face_mm", "and cover_radius_mm belong together; give both or none"
    width = part.shell_width_mm
    for name in ("flange_left_mm", "flange_right_mm"):
        place: Span | None = getattr(part, name)
        if place is not None and width is not None and place.high > width.high:
            yield name, f"lies beyond the shell, which is {_read_out(width)} wide"


def stack_faults(part: AxleSet) -> Iterator[FieldFault]:
    """Pieces of no thickness, and a left side that ends elsewhere than at the shell."""
    for name in ("left_stack", "right_stack"):
        pieces: tuple[Piece, ...] = getattr(part, name)
        if any(piece.mm.low <= 0 for piece in pieces):
            yield name, "must have pieces above 0 mm only"
    face, left = part.shell_face_mm, length_of(part.left_stack)
    if part.left_stack and face is not None and not face.meets(left):
        yield "left_stack", f"adds up to {_read_out(left)}, and shell_face_mm is {_read_out(face)}"


def cog_faults(part: CogSeat) -> Iterator[FieldFault]:
    """Cogs that stand in the wrong order."""
    inner, outer = part.largest_cog_face_mm, part.smallest_cog_face_mm
    if inner is not None and outer is not None and inner.low >= outer.low:
        yield "largest_cog_face_mm", "must be below smallest_cog_face_mm, which lies further out"


def stacks_that_do_not_add_up(parts: Mapping[str, Sequence[Part]]) -> Iterator[Fault]:
    """Axle sets whose two sides and the shell between them are not as long as the set says it is."""
    hubs = {part.id: part for part in parts["hubs"]}
    for axle_set in parts["axle_sets"]:
        assert isinstance(axle_set, AxleSet)  # noqa: S101 - the file's kind
        if not (axle_set.left_stack and axle_set.right_stack):
            continue
        sides, wanted = length_of((*axle_set.left_stack, *axle_set.right_stack)), axle_set.over_locknut_mm
        for hub in (hubs.get(name) for name in axle_set.hubs):
            width = hub.shell_width_mm if isinstance(hub, Hub) else None
            if hub is not None and width is not None and not wanted.meets(sides + width):
                message = (
                    f"adds up to {_read_out(sides + width)} with left_stack and the shell of {hub.id!r}, "
                    f"and over_locknut_mm is {_read_out(wanted)}"
                )
                yield Fault("axle_sets.yaml", axle_set.id, "right_stack", message)
