"""What else on a frame could hold the end of a torque arm, where the chainstay can't serve.

A brake mount that nothing uses is the best of them: it was made for a brake's torque, both ways. A seatstay
bears a clamp as a chainstay does, where no caliper sits on it. What each of them bears is an estimate.
"""

from __future__ import annotations

import math
from collections.abc import Iterable
from typing import Literal, NamedTuple, TypeAlias

from app.catalogue.standards import Standards
from app.facts.span import THOUSAND, Span
from app.mechanics.caliper_solids import Tables
from app.mechanics.mounts import Bolts, is_bolts, post_bolts

Place: TypeAlias = Literal["is_mount", "post_mount", "seatstay"]

# The smallest and the largest rotor that a frame's own posts are made for.
ROTORS_MM = (140, 203)


class OtherAnchor(NamedTuple):
    """A place for the end of another arm, which holds it both ways.

    piece      the row of the table of anchors that says what it bears
    lever_mm   from the axle to where the arm would be held
    bears_nm   the torque that it holds at that lever
    """

    place: Place
    piece: str
    lever_mm: Span
    bears_nm: Span


def other_anchors(
    *,
    mount: str | None,
    seatstay_bears_a_clamp: bool,
    arm_reach_mm: Span,
    tables: Tables,
    standards: Standards,
) -> tuple[OtherAnchor, ...]:
    """The places that a bike offers, first the one that is sure to bear most.

    mount          a brake mount that nothing uses: is or post, or None
    arm_reach_mm   of an arm that would lie along the seatstay
    """
    found = [] if mount is None else [_on_mount(mount, tables, standards)]
    if seatstay_bears_a_clamp:
        found.append(_anchor("seatstay", "two_half_clamp", arm_reach_mm, standards))
    return tuple(sorted(found, key=lambda each: -each.bears_nm.low))


def _on_mount(mount: str, tables: Tables, standards: Standards) -> OtherAnchor:
    if mount == "is":
        return _anchor("is_mount", "is_hole", _levers([is_bolts(tables.holes)]), standards)
    posts = [post_bolts(tables.path, rotor) for rotor in ROTORS_MM]
    return _anchor("post_mount", "post_or_flat_boss", _levers(posts), standards)


def _levers(mounts: Iterable[Bolts]) -> Span:
    """From the axle to the nearest bolt at least, and to the farthest at most."""
    reaches = [
        (math.hypot(*bolts.near) - bolts.off_mm, math.hypot(*bolts.far) + bolts.off_mm) for bolts in mounts
    ]
    return Span.outward(min(near for near, _ in reaches), max(far for _, far in reaches))


def _anchor(place: Place, piece: str, lever_mm: Span, standards: Standards) -> OtherAnchor:
    force = standards.anchor(piece).force_n
    # N times mm, in thousandths of both, are thousandths of N·m a million times.
    scale = THOUSAND * THOUSAND
    bears = Span(force.low * lever_mm.low // scale, -(-force.high * lever_mm.high // scale))
    return OtherAnchor(place, piece, lever_mm, bears)
