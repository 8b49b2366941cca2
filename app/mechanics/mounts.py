"""Where a caliper's mount puts its bolts, seen from the left, for each of the three mounts in use.

Mount frame: the origin is the axle's centre, u runs along the line of the two bolts from the near one to the
far one, v square to it towards the side of the caliper. On the bike the frame is turned about the axle by the
bearing of that line. Lengths are mm, angles degrees.
"""

from __future__ import annotations

import math
from itertools import product
from typing import NamedTuple

from app.facts.span import THOUSAND, Span
from app.mechanics.plane import Point, at

# The rotor at which the published path of the post mount starts, and half a rotor's growth along it.
PATH_STARTS_AT_MM = 160
# Posts are faced by hand, and the two large makers' drawings differ by so much along either axis.
POST_OFF_MM = 0.5
# How much an adapter makes the rotor larger. Another one than the usual two may be any that is sold.
STEPS_MM = {"none": (0, 0), "plus_20": (20, 20), "plus_40": (40, 40), "other": (0, 80)}
# An IS mount stands turned by so much against the post mount whose caliper it carries.
IS_TO_POST_DEG = 7
# From the rotor's edge in to the middle of the pads, an estimate.
PAD_IN_MM = 7.5
# From a flat mount's far bolt to where the stay is free, an estimate as all the rest of it.
FLAT_BEYOND_MM = 15
FLAT_PATH_DEG, FLAT_SEAT_MM, FLAT_HALF_PITCH_MM, FLAT_OFF_MM = 30.5, 21, 17, 7


class Bolts(NamedTuple):
    """The two bolts of a mount in its frame, and how far off each of them may be in any direction."""

    near: Point
    far: Point
    off_mm: float


class IsHoles(NamedTuple):
    """The published lengths of an IS tab: from the axle to each hole, and from hole to hole."""

    near_mm: Span
    far_mm: Span
    pitch_mm: Span


class PostPath(NamedTuple):
    """The published path on which the posts move out as the rotor grows."""

    path_deg: Span
    start_mm: Span
    side_mm: Span
    pitch_mm: Span


def is_angle_deg(near_mm: float, far_mm: float, pitch_mm: float) -> float:
    """The angle at the axle between the two holes of an IS tab, by the law of cosines."""
    return math.degrees(math.acos((near_mm**2 + far_mm**2 - pitch_mm**2) / (2 * near_mm * far_mm)))


def _is_places(near_mm: float, far_mm: float, pitch_mm: float) -> tuple[Point, Point]:
    """Both holes: the line's distance is twice the triangle's area over the pitch."""
    angle = math.radians(is_angle_deg(near_mm, far_mm, pitch_mm))
    line = near_mm * far_mm * math.sin(angle) / pitch_mm
    return (math.sqrt(near_mm**2 - line**2), line), (math.sqrt(far_mm**2 - line**2), line)


def is_bolts(holes: IsHoles) -> Bolts:
    """The holes of an IS tab, whatever the rotor; off by what the tolerances of the lengths allow."""
    near, far = _is_places(*(_middle(span) for span in holes))
    corners = [_is_places(*lengths) for lengths in product(*(span.ends for span in holes))]
    off = max(max(math.dist(one, near), math.dist(other, far)) for one, other in corners)
    return Bolts(near, far, off)


def post_bolts(path: PostPath, rotor_mm: float) -> Bolts:
    """The faces of the posts made for one size of rotor, where the bolts enter them."""
    degrees, start, side, pitch = (_middle(span) for span in path)
    along = start + (rotor_mm - PATH_STARTS_AT_MM) / 2
    (path_u, path_v), (side_u, side_v) = at(along, degrees), at(side, degrees + 90)
    near = (path_u + side_u, path_v + side_v)
    return Bolts(near, (near[0] + pitch, near[1]), math.hypot(POST_OFF_MM, POST_OFF_MM))


def native_rotor(rotor_mm: Span, adapter: str) -> Span:
    """The rotor that the frame's own mount is made for, under an adapter of so many steps."""
    low, high = STEPS_MM[adapter]
    return rotor_mm - Span.between(low, high)


def flat_bolts(rotor_mm: float) -> Bolts:
    """An estimate of a flat mount's bolts: no published length is known.

    u is along the stay here, and v the height of the seat over the line from the axle along the stay.
    """
    pad_u, pad_v = at(rotor_mm / 2 - PAD_IN_MM, FLAT_PATH_DEG)
    seat = pad_v - FLAT_SEAT_MM
    near, far = (pad_u - FLAT_HALF_PITCH_MM, seat), (pad_u + FLAT_HALF_PITCH_MM, seat)
    return Bolts(near, far, FLAT_OFF_MM)


def flat_ends_mm(rotor_mm: Span) -> Span:
    """An estimate, in whole mm, of how near to the axle a flat-mount caliper ends on the stay."""
    ends = (bolts.far[0] - bolts.off_mm + FLAT_BEYOND_MM for bolts in map(flat_bolts, rotor_mm.ends))
    return Span.between(*map(math.floor, ends))


def _middle(span: Span) -> float:
    return (span.low + span.high) / 2 / THOUSAND
