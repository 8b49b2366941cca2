"""The room that a caliper takes: what a mount says of it, and what a measured point adds."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st
from shapely import LineString, Point

from app.facts.span import Span
from app.mechanics.caliper_envelope import Caliper, Readings, caliper
from app.mechanics.mounts import post_bolts
from app.mechanics.plane import Body, at, polar, union
from tests.mechanics.scenes import TABLES, calipers, closer, lies_in, measured, readings

NEAR_MM = 0.05


def of(wide: Readings) -> Caliper:
    return caliper(wide, TABLES)


def nearest_mm(bodies: tuple[Body, ...]) -> float:
    return float(union([body.outer for body in bodies]).distance(Point(0, 0)))


def on_the_bike(place: tuple[float, float], line_deg: float) -> Point:
    distance, bearing = polar(place)
    return Point(at(distance, bearing + line_deg))


@given(calipers(), st.data())
def test_a_closer_reading_opens_no_new_places_and_loses_no_sure_ones(
    wide: Readings, data: st.DataObject
) -> None:
    before, after = of(wide), of(data.draw(closer(wide)))

    for old, new in zip(before.bodies, after.bodies, strict=True):
        assert lies_in(new.outer, old.outer)
        assert lies_in(old.inner, new.inner)


@given(calipers(), st.data())
def test_a_closer_reading_moves_no_end_along_the_axle_outward(wide: Readings, data: st.DataObject) -> None:
    before, after = of(wide), of(data.draw(closer(wide)))

    for old, new in zip(before.bodies, after.bodies, strict=True):
        assert old.axial_outer[0] <= new.axial_outer[0]
        assert new.axial_outer[1] <= old.axial_outer[1]
        assert old.axial_inner is not None
        assert new.axial_inner is not None
        assert new.axial_inner[0] <= old.axial_inner[0]
        assert old.axial_inner[1] <= new.axial_inner[1]


@given(calipers(), st.data())
def test_what_is_sure_of_a_mount_stays_within_what_any_closer_reading_leaves(
    wide: Readings, data: st.DataObject
) -> None:
    before, after = of(wide), of(data.draw(closer(wide)))
    left = union([body.outer for body in after.bodies])

    assert all(lies_in(body.outer, left) for body in before.sure)


@pytest.mark.parametrize("rotor", [140, 160, 180, 203])
def test_both_bolts_of_posts_lie_in_the_caliper(rotor: int) -> None:
    found = of(measured("post", rotor_mm=Span.exactly(rotor)))
    bolts = post_bolts(TABLES.path, rotor)

    assert found.near[0].inner.contains(on_the_bike(bolts.near, 30))
    assert found.far[0].inner.contains(on_the_bike(bolts.far, 30))


def test_nothing_is_nearer_than_the_nearest_point_that_was_measured() -> None:
    pattern = readings("post", rotor_mm=Span.exactly(160), line_deg=Span.exactly(30))

    from_mount, narrowed = of(pattern), of(pattern._replace(nearest_mm=Span.around("47.5", 1)))

    # 56.31 to the near bolt, 12 and 0.71 for the largest ear and the posts' own tolerance.
    assert nearest_mm(from_mount.bodies) == pytest.approx(56.31 - 12.71, abs=NEAR_MM)
    assert nearest_mm(narrowed.bodies) == pytest.approx(46.5, abs=NEAR_MM)


@pytest.mark.parametrize("line", [Span.exactly(36), Span.between(20, 60)])
def test_the_bolts_of_a_tab_stay_where_they_are_whatever_was_measured(line: Span) -> None:
    found = of(readings("is", rotor_mm=Span.exactly(160), line_deg=line, nearest_mm=Span.around(101, 1)))

    assert union([body.outer for body in found.near]).contains(Point(at(39.9, 36 + 59.53)))


def test_an_adapter_keeps_the_posts_of_the_smaller_rotor() -> None:
    pattern = readings("post", rotor_mm=Span.exactly(180), line_deg=Span.exactly(30))

    without, with_adapter = of(pattern), of(pattern._replace(adapter="plus_20"))

    # 65.63 and 56.31 to the near bolt.
    assert nearest_mm(without.bodies) == pytest.approx(65.63 - 12.71, abs=NEAR_MM)
    assert nearest_mm(with_adapter.bodies) == pytest.approx(56.31 - 12.71, abs=NEAR_MM)


def test_a_tab_has_its_bosses_where_they_are_published() -> None:
    found = of(readings("is", rotor_mm=Span.exactly(160), line_deg=Span.exactly(36)))
    near = next(body for body in found.near if body.name == "tab and bolts")

    # 39.9 to the hole; a boss of 9 and 2 more, and half a millimetre that the tolerances move the hole by.
    assert near.outer.distance(Point(0, 0)) == pytest.approx(39.9 - 11 - 0.5, abs=NEAR_MM)
    assert near.inner.contains(Point(at(39.9, 36 + 59.53)))
    assert near.axial_inner == (-6, 4)


def test_a_line_that_nobody_measured_leaves_no_place_sure() -> None:
    found = of(readings("is", rotor_mm=Span.exactly(160)))

    assert all(body.inner.is_empty for body in found.bodies)


def test_a_flat_mount_is_where_it_was_measured_and_further_out() -> None:
    found = of(measured("flat"))

    assert nearest_mm(found.near) == pytest.approx(46.5, abs=NEAR_MM)
    assert found.near[0].outer.contains(Point(at(47.5 + 30, 113)))
    assert found.far[0].outer.contains(LineString((at(47.5, 113), at(99, 65))).centroid)
    assert found.sure == ()


def test_a_flat_mount_that_nobody_measured_may_be_anywhere() -> None:
    found = of(readings("flat"))

    assert all(found.near[0].outer.contains(Point(at(60, bearing))) for bearing in range(-40, 180, 20))


def test_a_measured_point_is_known_as_well_as_it_was_measured() -> None:
    near, far = (body.somewhere[0] for body in of(measured("flat")).bodies)

    assert near.centre == pytest.approx(at(47.5, 113))
    assert near.off_mm == pytest.approx(1 + 48.5 * math.radians(1))
    assert far.centre == pytest.approx(at(99, 65))


def test_the_outboard_half_reaches_from_its_outermost_point_to_the_rotor() -> None:
    near = of(measured("flat")).near[0]

    # Rotor at 14.4 ± 0.5, depth 19 ± 0.5: its outer face lies from -5.6 to -3.6.
    assert near.axial_outer == pytest.approx((-5.6, 14.9))
    assert near.axial_inner == pytest.approx((-3.6, 13.9))
