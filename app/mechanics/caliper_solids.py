"""What a caliper on a published mount is made of, seen from the left: bosses, ears, pad pocket and body.

All outlines are convex and lie in the frame of the mount's bolts. Their places are published; how far metal
reaches around them is an estimate, so that it is taken at its largest: it can ask for a measurement, and
never stop a fit. What can is the bolts themselves, which are where the mount's holes are.
"""

from __future__ import annotations

import math
from typing import Literal, NamedTuple, TypeAlias, cast

import numpy as np
import shapely
from shapely import Polygon

from app.facts.span import THOUSAND, Span
from app.mechanics.mounts import (
    IS_TO_POST_DEG,
    PAD_IN_MM,
    Bolts,
    IsHoles,
    PostPath,
    is_bolts,
    native_rotor,
    post_bolts,
)
from app.mechanics.plane import (
    FAR_MM,
    NOTHING,
    Point,
    around,
    at,
    grown,
    polar,
    round_inside,
    round_outside,
    shrunk,
    turned,
)

# Estimates: 9 mm and 2 or 3 more around a bolt; a body 103 mm long at most, 55 mm high over its seat, whose
# pad pocket reaches 20 mm and 5 more from the pads to the axle, and 19 mm below the faces of the posts, 27 mm
# to either side of the middle.
BOSS_MM, EAR_MM = 11.0, 12.0
BEYOND_BOLTS_MM, HEIGHT_MM = 14.4, 55.0
POCKET_MM, POCKET_BELOW_MM, POCKET_HALF_MM, PADS_DEG = 25.0, 19.0, 27.0, 53.0
# How far the published turn between the two mounts may be off.
TURN_OFF_DEG = 3.0
# The shank of an M6 bolt.
BOLT_MM = 3.0
# A rotor's growth moves the posts by half of it.
PER_ROTOR_MM = 0.5


# Which bolt a piece belongs to, by the bolt's place in `Bolts`. The middle goes with the near one.
End: TypeAlias = Literal[0, 1]
NEAR: End = 0
FAR: End = 1
ENDS: tuple[End, End] = (NEAR, FAR)


class Tables(NamedTuple):
    """The published lengths of the mounts that have any."""

    holes: IsHoles
    path: PostPath


class Solid(NamedTuple):
    """One piece of a caliper in the frame of its bolts.

    most  everywhere that it may reach, for any readings but the bearing of the bolts' line
    sure  what `most` holds whatever a closer reading of the rotor says
    bolt  where there is metal for certain
    tab   whether it is bolted through a tab, beside the dropout, rather than a part of the caliper
    """

    name: str
    end: End
    most: Polygon
    sure: Polygon
    bolt: Polygon = NOTHING
    tab: bool = False


class _Disc(NamedTuple):
    """A boss or an ear: a disc whose centre is off by so much."""

    centre: Point
    radius: float
    off: float

    @property
    def most(self) -> Polygon:
        return round_outside(self.centre, self.radius + self.off)

    @property
    def sure(self) -> Polygon:
        return round_outside(self.centre, self.radius - self.off) if self.radius > self.off else NOTHING

    def metal(self) -> Polygon:
        """The shank of the bolt through it."""
        return shrunk(round_inside(self.centre, BOLT_MM), self.off)


def solids(mount: str, adapter: str, rotor_mm: Span, tables: Tables) -> tuple[Solid, ...]:
    """The pieces of a caliper on an IS tab or on posts; none on a flat mount, which nobody published."""
    if mount == "flat":
        return ()
    bolts, off = _for_rotor(tables.path, rotor_mm)
    if mount == "is":
        return _on_tab(is_bolts(tables.holes), bolts, off, rotor_mm)
    native, native_off = _for_rotor(tables.path, native_rotor(rotor_mm, adapter))
    ears = [_ear(bolts, native, end, off, native_off) for end in ENDS]
    return (*ears, *_middle_pieces(bolts, off, rotor_mm, turn_deg=0))


def _for_rotor(path: PostPath, rotor_mm: Span) -> tuple[Bolts, float]:
    """The posts for a rotor, and how far off they are for all that its size may still be."""
    low, high = rotor_mm.ends
    return post_bolts(path, (low + high) / 2), (high - low) / 2 * PER_ROTOR_MM


def _ear(bolts: Bolts, native: Bolts, end: End, off: float, native_off: float) -> Solid:
    """An ear of the caliper, down to the frame's own post where an adapter lies between."""
    ear = _Disc(bolts[end], EAR_MM, off + bolts.off_mm)
    post = _Disc(native[end], EAR_MM, native_off + native.off_mm)
    return Solid("ear", end, around(ear.most, post.most), ear.sure, ear.metal())


def _on_tab(tab: Bolts, bolts: Bolts, off: float, rotor_mm: Span) -> tuple[Solid, ...]:
    """Bosses at the holes of the tab, and above them the caliper, on the posts of its adapter."""
    found: list[Solid] = []
    for end in ENDS:
        boss = _Disc(tab[end], BOSS_MM, tab.off_mm)
        distance, bearing = polar(bolts[end])
        sway = distance * math.radians(TURN_OFF_DEG)
        ear = _Disc(at(distance, bearing - IS_TO_POST_DEG), EAR_MM, off + bolts.off_mm + sway)
        found += [
            Solid("boss", end, boss.most, boss.sure, boss.metal(), tab=True),
            Solid("ear", end, around(boss.most, ear.most), ear.sure),
        ]
    return (*found, *_middle_pieces(bolts, off, rotor_mm, turn_deg=-IS_TO_POST_DEG))


def _middle_pieces(bolts: Bolts, off: float, rotor_mm: Span, *, turn_deg: float) -> tuple[Solid, ...]:
    """Pad pocket and body between the ears."""
    (start, seat), (stop, _) = bolts.near, bolts.far
    middle = (start + stop) / 2
    radius = (rotor_mm.low + rotor_mm.high) / 4 / THOUSAND
    pocket = _beyond(
        radius - PAD_IN_MM - POCKET_MM,
        _box(middle - POCKET_HALF_MM, middle + POCKET_HALF_MM, seat - POCKET_BELOW_MM, seat),
    )
    body = _box(start - BEYOND_BOLTS_MM, stop + BEYOND_BOLTS_MM, seat, seat + HEIGHT_MM)
    return tuple(
        _piece(name, outline, off + bolts.off_mm, turn_deg)
        for name, outline in (("pad pocket", pocket), ("body", body))
    )


def _piece(name: str, outline: Polygon, off: float, turn_deg: float) -> Solid:
    """A piece of the middle, turned with the caliper against the tab; the turn itself may be a little off."""
    reach = float(np.hypot(*shapely.get_coordinates(outline).T).max(initial=0.0))
    sway = off + (reach * math.radians(TURN_OFF_DEG) if turn_deg else 0.0)
    there = cast("Polygon", turned(outline, turn_deg))
    return Solid(name, NEAR, grown(there, sway), shrunk(there, sway))


def _box(left: float, right: float, bottom: float, top: float) -> Polygon:
    return Polygon([(left, bottom), (right, bottom), (right, top), (left, top)])


def _beyond(distance: float, outline: Polygon) -> Polygon:
    """What lies of an outline at least so far from the axle, towards the pads."""
    half_plane = turned(_box(distance, FAR_MM, -FAR_MM, FAR_MM), PADS_DEG)
    return cast("Polygon", shapely.intersection(outline, half_plane))
