"""The room that a caliper takes on the bike: as far as its mount is published, and as far as it was measured.

On an IS tab or on posts the mount says where each piece is, once the line of its bolts is known. What was
measured narrows that: nothing is nearer to the axle than the nearest point, and there is metal at both
measured points. On a flat mount there is nothing but the two points: the caliper lies beyond the near one
and between both.

An unknown reading is only a wide one. Where mount and measured points contradict each other, the mount is
believed here, because a closer reading may not turn a verdict; that they do is a finding of its own.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from functools import lru_cache
from typing import NamedTuple

import shapely
from shapely import Polygon

from app.facts.span import Span
from app.mechanics.caliper_solids import FAR, NEAR, End, Solid, Tables, solids
from app.mechanics.plane import (
    NOTHING,
    Axial,
    Body,
    Shape,
    around,
    kept,
    round_inside,
    sector,
    spot,
    swept,
    union,
    without,
)
from app.mechanics.prism_gap import Room, farthest

# Head and tab on the outer side of the dropout's plane, at most and at least; thread in the adapter at least.
TAB_MOST_MM, TAB_LEAST_MM, THREAD_MM = 15.0, 6.0, 4.0
# How far a flat-mount caliper goes on beyond its nearest point, away from the axle.
FLAT_HEIGHT_MM = 38.0
AXLE = (0.0, 0.0)
KEPT_CALIPERS = 128


class Readings(NamedTuple):
    """What is known of the caliper. A point that a rule doesn't look at is None."""

    mount: str
    adapter: str
    rotor_mm: Span
    line_deg: Span
    rotor_offset_mm: Span
    outboard_depth_mm: Span
    nearest_mm: Span
    bearing_deg: Span
    far_mm: Span | None = None
    far_bearing_deg: Span | None = None


class Caliper(NamedTuple):
    """The bodies in an arm's way.

    near, far  those at the near bolt with the middle of the caliper, and those at the far bolt
    sure       what the published mount puts there whatever closer readings say, as far as they agree with it
    """

    near: tuple[Body, ...]
    far: tuple[Body, ...]
    sure: tuple[Body, ...]

    @property
    def bodies(self) -> tuple[Body, ...]:
        """All of them."""
        return (*self.near, *self.far)


class _Along(NamedTuple):
    """Where along the axle something is: at most, its metal, and what closer readings leave at least."""

    most: Axial
    metal: Axial
    sure: Axial


def caliper(readings: Readings, tables: Tables) -> Caliper:
    """The caliper of a bike, from all that is known of it; without its far end where nobody asks for that."""
    near = _near(readings._replace(far_mm=None, far_bearing_deg=None), tables)
    if readings.far_mm is None:
        return near
    far = _far(readings, tables)
    return Caliper(near.near, far.far, (*near.sure, *far.sure))


def _pieces(readings: Readings, tables: Tables, end: End) -> list[Solid]:
    found = solids(readings.mount, readings.adapter, readings.rotor_mm, tables)
    return [piece for piece in found if piece.end == end]


@lru_cache(maxsize=KEPT_CALIPERS)
def _near(readings: Readings, tables: Tables) -> Caliper:
    """The near end alone: the same bodies whether or not anybody asks for the far one."""
    pieces = _pieces(readings, tables, NEAR)
    bodies = (*_bodies(pieces, readings), _nearest_point(readings))
    return Caliper(bodies, (), tuple(_sure(pieces, readings)))


@lru_cache(maxsize=KEPT_CALIPERS)
def _far(readings: Readings, tables: Tables) -> Caliper:
    pieces = _pieces(readings, tables, FAR)
    bodies = (*_bodies(pieces, readings), *_far_point(readings))
    return Caliper((), bodies, tuple(_sure(pieces, readings)))


def _half(readings: Readings) -> _Along:
    """The outboard half: from the caliper's outermost point to the rotor."""
    rotor_low, rotor_high = readings.rotor_offset_mm.ends
    depth_low, depth_high = readings.outboard_depth_mm.ends
    most = rotor_low - depth_high, rotor_high
    return _Along(most, (most[1], most[0]), (rotor_high - depth_low, rotor_low))


def _tab(readings: Readings) -> _Along:
    """Tab, bolts and what lies on its inner face, up to the rotor."""
    low, high = (max(THREAD_MM, end) for end in readings.rotor_offset_mm.ends)
    return _Along((-TAB_MOST_MM, high), (-TAB_LEAST_MM, THREAD_MM), (-TAB_MOST_MM, low))


def _along(piece: Solid, readings: Readings) -> _Along:
    return _tab(readings) if piece.tab else _half(readings)


def _alike(pieces: Sequence[Solid]) -> Iterator[tuple[str, list[Solid]]]:
    """The pieces that reach equally far along the axle, by what they are together."""
    for name, tab in (("caliper", False), ("tab and bolts", True)):
        if alike := [piece for piece in pieces if piece.tab is tab]:
            yield name, alike


def _bodies(pieces: Sequence[Solid], readings: Readings) -> Iterator[Body]:
    """The pieces as bodies."""
    for name, alike in _alike(pieces):
        along = _along(alike[0], readings)
        metal = union([_metal(piece, readings) for piece in alike])
        yield Body(name, _reach(alike, readings), metal, along.most, along.metal)


def _reach(pieces: Sequence[Solid], readings: Readings) -> Shape:
    """Everywhere that pieces may be: no nearer to the axle than the nearest point that was measured.

    Bolts are where the mount has them, whatever was measured.
    """
    line = readings.line_deg.ends
    nearest = round_inside(AXLE, readings.nearest_mm.ends[0])
    bolts = [swept(piece.bolt, *line) for piece in pieces if not piece.bolt.is_empty]
    return union([without(union([swept(piece.most, *line) for piece in pieces]), nearest), *bolts])


def _metal(piece: Solid, readings: Readings) -> Polygon:
    """Where there is metal for certain, whatever the bearing still may be."""
    return kept(piece.metal, *readings.line_deg.ends)


def _sure(pieces: Sequence[Solid], readings: Readings) -> Iterator[Body]:
    """What any closer reading leaves of the pieces, were the caliper's nearest point as far as it can be."""
    nearest, line = round_inside(AXLE, readings.nearest_mm.ends[1]), readings.line_deg.ends
    for name, alike in _alike(pieces):
        left = without(union([kept(piece.sure, *line) for piece in alike]), nearest)
        shape = union([left, *(_metal(piece, readings) for piece in alike)])
        axial = _along(alike[0], readings).sure
        yield Body(name, shape, shape, axial, axial)


def _nearest_point(readings: Readings) -> Body:
    """The nearest point: on a flat mount with what lies beyond it, elsewhere metal that the mount placed."""
    along, point = _half(readings), (readings.nearest_mm.ends, readings.bearing_deg.ends)
    (least, most), bearing = point
    beyond = sector((least, most + FLAT_HEIGHT_MM), bearing) if readings.mount == "flat" else NOTHING
    return Body("nearest point", beyond, NOTHING, along.most, along.sure, (spot(*point),))


def _far_point(readings: Readings) -> Iterator[Body]:
    """The far end: on a flat mount with what lies between it and the nearest point."""
    if readings.far_mm is None or readings.far_bearing_deg is None:
        return
    along, flat = _half(readings), readings.mount == "flat"
    near = readings.nearest_mm.ends, readings.bearing_deg.ends
    far = readings.far_mm.ends, readings.far_bearing_deg.ends
    between = around(sector(*near), sector(*far)) if flat else NOTHING
    yield Body("far end", between, NOTHING, along.most, along.sure, (spot(*far),))


@lru_cache(maxsize=KEPT_CALIPERS)
def off_mount(readings: Readings, tables: Tables) -> Span:
    """How far the measured nearest point lies outside of where the mount can have a caliper, in mm.

    Zero where it lies inside. A flat mount, which says nothing, is a ValueError.
    """
    pieces = solids(readings.mount, readings.adapter, readings.rotor_mm, tables)
    if not pieces:
        message = "Nobody published where a flat mount has its caliper."
        raise ValueError(message)
    line = readings.line_deg.ends
    point = readings.nearest_mm.ends, readings.bearing_deg.ends
    reach = union([swept(piece.most, *line) for piece in pieces])
    certain = union([kept(piece.sure, *line) for piece in pieces])
    least = float(shapely.distance(sector(*point), reach))
    return Room(least, max(least, farthest(spot(*point), certain))).span()
