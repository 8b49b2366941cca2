"""Places along the axle on the left side, in mm from the dropout's inner face (the lip) inboard.

A closed dropout has a socket: a hub stands on its floor, which lies outboard of the lip by the socket's
depth.
"""

from __future__ import annotations

from fractions import Fraction

from app.facts.span import Span

OPEN_DROPOUT = Span(0, 0)


def from_lip(*, from_floor_mm: Span, socket_depth_mm: Span) -> Span:
    """A place of the hub that is known from the face it stands on."""
    return from_floor_mm - socket_depth_mm


def rotor_shift(
    *, rotor_seat_mm: Span, socket_depth_mm: Span, rotor_thickness_mm: Span, rotor_offset_mm: Span
) -> Span:
    """How much further inboard the middle of the rotor runs on a new hub than where the caliper expects it.

    rotor_seat_mm    on the new hub, from the floor to the face that the rotor lies on: its inner face
    rotor_offset_mm  from the lip to the middle of the rotor, where the caliper stands now
    """
    seat = from_lip(from_floor_mm=rotor_seat_mm, socket_depth_mm=socket_depth_mm)
    return seat - rotor_thickness_mm.times(Fraction(1, 2)) - rotor_offset_mm


def shell_to_caliper(
    *, shell_face_mm: Span, socket_depth_mm: Span, rotor_offset_mm: Span, inboard_depth_mm: Span
) -> Span:
    """From the caliper's innermost point to the motor shell; below zero where they pass each other.

    shell_face_mm    on the new hub, from the floor to the shell
    inboard_depth_mm from the middle of the rotor to the caliper's innermost point
    """
    shell = from_lip(from_floor_mm=shell_face_mm, socket_depth_mm=socket_depth_mm)
    return shell - rotor_offset_mm - inboard_depth_mm
