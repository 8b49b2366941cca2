"""What a caliper on a published mount is made of, seen from the left: bosses, ears, pad pocket and body.

All outlines are convex and lie in the frame of the mount's bolts. Their places are published; how far metal
reaches around them is an estimate, so that it is taken at its largest: it can ask for a measurement, and
never stop a fit. What can is the bolts themselves, which are where the mount's holes are.
"""

from __future__ import annotations

import math
from typing import Literal, NamedTuple, TypeAlias, cast

import shapely
from shapely import Polygon
from shapely.affinity import translate

from app.facts.span import Span
from app.mechanics.mounts import IS_TO_POST_DEG, Bolts, IsHoles, PostPath, is_bolts, native_rotor, post_bolts
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

# Estimates: 9 mm and 2 or 3 more around a bolt; a body 103 mm long at most, 55 mm high over its seat. Its pad
# pocket reaches 27 mm to either side of the middle and 19 mm below the faces of the posts. The pocket's floor
# lies square to the direction of the pads, 20 mm and 5 more from their middle: so far inside the near bolt.
BOSS_MM, EAR_MM = 11.0, 12.0
BEYOND_BOLTS_MM, HEIGHT_MM = 14.4, 55.0
POCKET_HALF_MM, POCKET_BELOW_MM, FLOOR_MM, PADS_DEG = 27.0, 19.0, 1.5, 53.0
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

    most      everywhere that it may reach, for any readings but the bearing of the bolts' line
    sure      what `most` holds whatever a closer reading of the rotor says
    bolt      where its bolt may be, which no other measurement can deny
    metal     where there is metal of the bolt for certain
    tab       whether it is bolted through a tab, beside the dropout, rather than a part of the caliper
    """

    name: str
    end: End
    most: Polygon
    sure: Polygon
    bolt: Polygon = NOTHING
    metal: Polygon = NOTHING
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

    @property
    def bolt(self) -> Polygon:
        """Where the bolt through it may be."""
        return round_outside(self.centre, BOLT_MM + self.off)

    @property
    def metal(self) -> Polygon:
        """The shank of the bolt through it."""
        return shrunk(round_inside(self.centre, BOLT_MM), self.off)


class _Posts(NamedTuple):
    """The posts for a rotor that is known so well.

    off_mm       how far off they are for all that its size may still be
    farthest_mm  from the axle to each of them, were the rotor as large as it can be
    """

    bolts: Bolts
    off_mm: float
    farthest_mm: tuple[float, float]


def _posts(path: PostPath, rotor_mm: Span) -> _Posts:
    low, high = rotor_mm.ends
    bolts, largest = post_bolts(path, (low + high) / 2), post_bolts(path, high)
    off = (high - low) / 2 * PER_ROTOR_MM + bolts.off_mm
    return _Posts(bolts, off, (math.hypot(*largest.near), math.hypot(*largest.far)))


def solids(mount: str, adapter: str, rotor_mm: Span, tables: Tables) -> tuple[Solid, ...]:
    """The pieces of a caliper on an IS tab or on posts; none on a flat mount, which nobody published."""
    if mount == "flat":
        return ()
    posts = _posts(tables.path, rotor_mm)
    if mount == "is":
        return _on_tab(is_bolts(tables.holes), posts)
    native = _posts(tables.path, native_rotor(rotor_mm, adapter))
    return (*(_ear(posts, native, end) for end in ENDS), *_middle(posts, turn_deg=0))


def _ear(posts: _Posts, native: _Posts, end: End) -> Solid:
    """An ear of the caliper, down to the frame's own post where an adapter lies between."""
    ear = _Disc(posts.bolts[end], EAR_MM, posts.off_mm)
    post = _Disc(native.bolts[end], EAR_MM, native.off_mm)
    return Solid("ear", end, around(ear.most, post.most), ear.sure, ear.bolt, ear.metal)


def _on_tab(tab: Bolts, posts: _Posts) -> tuple[Solid, ...]:
    """Bosses at the holes of the tab, and above them the caliper, on the posts of its adapter."""
    found: list[Solid] = []
    for end in ENDS:
        boss = _Disc(tab[end], BOSS_MM, tab.off_mm)
        distance, bearing = polar(posts.bolts[end])
        ear = _Disc(at(distance, bearing - IS_TO_POST_DEG), EAR_MM, posts.off_mm + _sways(posts, end))
        found += [
            Solid("boss", end, boss.most, boss.sure, boss.bolt, boss.metal, tab=True),
            Solid("ear", end, around(boss.most, ear.most), ear.sure),
        ]
    return (*found, *_middle(posts, turn_deg=-IS_TO_POST_DEG))


def _sways(posts: _Posts, end: End) -> float:
    """How far a post is off because the turn between the mounts is."""
    return posts.farthest_mm[end] * math.radians(TURN_OFF_DEG)


def _middle(posts: _Posts, *, turn_deg: float) -> tuple[Solid, ...]:
    """Pad pocket and body between the ears, turned with the caliper against the tab."""
    (start, seat), (stop, _) = posts.bolts.near, posts.bolts.far
    middle = (start + stop) / 2
    pocket = _box(middle - POCKET_HALF_MM, middle + POCKET_HALF_MM, seat - POCKET_BELOW_MM, seat)
    body = _box(start - BEYOND_BOLTS_MM, stop + BEYOND_BOLTS_MM, seat, seat + HEIGHT_MM)
    off = posts.off_mm + (_sways(posts, FAR) if turn_deg else 0.0)
    pieces = []
    for name, outline in (("pad pocket", _above_floor(pocket, posts.bolts.near)), ("body", body)):
        there = cast("Polygon", turned(outline, turn_deg))
        pieces.append(Solid(name, NEAR, grown(there, off), shrunk(there, off)))
    return tuple(pieces)


def _box(left: float, right: float, bottom: float, top: float) -> Polygon:
    return Polygon([(left, bottom), (right, bottom), (right, top), (left, top)])


def _above_floor(outline: Polygon, near: Point) -> Polygon:
    """What lies of an outline on the pads' side of the pocket's floor."""
    towards_pads = turned(_box(-FLOOR_MM, FAR_MM, -FAR_MM, FAR_MM), PADS_DEG)
    return cast("Polygon", shapely.intersection(outline, translate(towards_pads, *near)))
