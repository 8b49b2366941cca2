"""Shapes around the axle: what may be there and what is there for sure, as an angle becomes known better."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st
from shapely import Point, Polygon
from shapely.affinity import translate

from app.mechanics.plane import (
    at,
    grown,
    kept,
    polar,
    round_inside,
    round_outside,
    sector,
    shrunk,
    spot,
    swept,
    turned,
)
from tests.mechanics.scenes import lies_in, outlines

angles = st.floats(-120, 200)
FLOATS = 1e-9


@st.composite
def narrowing(draw: st.DrawFn) -> tuple[tuple[float, float], tuple[float, float]]:
    """An angle as it is known at first, and as it is known later."""
    first = sorted((draw(angles), draw(angles)))
    share = sorted((draw(st.floats(0, 1)), draw(st.floats(0, 1))))
    width = first[1] - first[0]
    return (first[0], first[1]), (first[0] + share[0] * width, first[0] + share[1] * width)


def convex(outline: Polygon) -> Polygon:
    hull = outline.convex_hull
    assert isinstance(hull, Polygon)
    return hull


def test_a_place_is_found_again_by_distance_and_bearing() -> None:
    assert polar(at(56.3, 83.1)) == pytest.approx((56.3, 83.1))


@given(st.floats(0.1, 60), st.floats(0, 360))
def test_a_disc_lies_between_its_two_polygons(radius: float, bearing: float) -> None:
    edge = Point(at(radius, bearing))

    assert round_outside((0, 0), radius).distance(edge) < FLOATS
    assert not round_inside((0, 0), radius * (1 - FLOATS)).contains(edge)


@given(outlines(), narrowing())
def test_a_closer_angle_never_opens_new_places(
    outline: Polygon, angle: tuple[tuple[float, float], tuple[float, float]]
) -> None:
    before, after = (swept(convex(outline), *ends) for ends in angle)

    assert lies_in(after, before)


@given(outlines(), narrowing())
def test_a_closer_angle_never_loses_a_sure_place(
    outline: Polygon, angle: tuple[tuple[float, float], tuple[float, float]]
) -> None:
    before, after = (kept(convex(outline), *ends) for ends in angle)

    assert lies_in(before, after)


@given(outlines(), st.floats(-100, 100), st.floats(0, 40), st.floats(0, 1))
def test_every_angle_lies_in_what_is_swept_and_holds_what_is_kept(
    outline: Polygon, first: float, width: float, share: float
) -> None:
    there = turned(convex(outline), first + share * width)

    assert lies_in(there, swept(convex(outline), first, first + width))
    assert lies_in(kept(convex(outline), first, first + width), there)


@given(outlines(), st.floats(0, 5), st.floats(0, 1), st.floats(0, 360))
def test_an_outline_that_is_off_stays_between_grown_and_shrunk(
    outline: Polygon, by: float, share: float, bearing: float
) -> None:
    there = translate(convex(outline), *at(by * share, bearing))

    assert lies_in(there, grown(convex(outline), by))
    assert lies_in(shrunk(convex(outline), by), there)


@given(st.floats(5, 150), st.floats(0, 30), st.floats(-45, 150), st.floats(0, 100), st.data())
def test_a_point_that_was_measured_lies_in_its_sector_and_in_its_spot(
    near: float, depth: float, first: float, width: float, data: st.DataObject
) -> None:
    distance, bearing = (near, near + depth), (first, first + width)
    there = Point(at(data.draw(st.floats(*distance)), data.draw(st.floats(*bearing))))

    spotted = spot(distance, bearing)

    assert sector(distance, bearing).distance(there) < FLOATS
    assert math.dist(spotted.centre, there.coords[0]) <= spotted.off_mm + FLOATS
