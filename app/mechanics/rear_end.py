"""How wide a rear end is for the hub that goes into it."""

from __future__ import annotations

from app.facts.span import Span

BOTH_SIDES = 2


def floor_to_floor_mm(*, lip_to_lip_mm: Span, socket_depth_mm: Span) -> Span:
    """The width that the hub's ends meet, in mm, where each end sits in a socket of that depth.

    A 142 hub is a 135 hub with 3.5 mm more at each end, and its sockets are 3.5 mm deep: its lips read 135.
    Not for open dropouts, where the lips are the faces that the hub meets.
    """
    return lip_to_lip_mm + socket_depth_mm.times(BOTH_SIDES)


def short_by_mm(width_mm: Span, wanted_mm: Span) -> Span:
    """How much a width falls short of the wanted one, in mm; zero where it is as wide or wider."""
    return (wanted_mm - width_mm).at_least(Span(0, 0))
