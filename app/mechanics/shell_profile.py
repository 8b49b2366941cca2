"""The motor's shell as steps, each a drum that begins at some place along the axle, beside the caliper."""

from __future__ import annotations

from collections.abc import Sequence
from functools import reduce

from app.catalogue.along_axle import ShellPart, ShellStep
from app.catalogue.along_axle_checks import length_of
from app.catalogue.hub_parts import AxleSet
from app.facts.span import Span
from app.mechanics.corner_gap import corner_gap

AT_THE_FACE = Span(0, 0)


def steps_of(hub: ShellPart) -> tuple[ShellStep, ...]:
    """The shell from the left inboard: one drum of the given radius where the maker gives no steps.

    None at all where neither is given.
    """
    if hub.shell_profile or hub.shell_radius_mm is None:
        return hub.shell_profile
    return (ShellStep(radius_mm=hub.shell_radius_mm, inboard_mm=AT_THE_FACE),)


def shell_face_of(axle_set: AxleSet) -> Span | None:
    """From the left floor to the shell's left face, in mm: as given, or the sum of the pieces before it."""
    if axle_set.shell_face_mm is not None or not axle_set.left_stack:
        return axle_set.shell_face_mm
    return length_of(axle_set.left_stack)


def shell_gap(*, steps: Sequence[ShellStep], room_mm: Span, nearest_mm: Span) -> Span:
    """From the caliper's inner half to the nearest step of the shell, in mm; below zero where they overlap.

    room_mm     along the axle, from the caliper's innermost point to the shell's left face
    nearest_mm  from the axle to the nearest point of the inner half

    The half is taken to reach so far in from its nearest point outward. Errors: no step is a TypeError.
    """
    gaps = [
        corner_gap(across_mm=nearest_mm - step.radius_mm, along_mm=room_mm + step.inboard_mm)
        for step in steps
    ]
    return reduce(Span.at_most, gaps)
