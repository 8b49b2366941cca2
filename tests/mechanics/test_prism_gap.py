"""The gap of two prisms: held against points that are strewn over both, and against what must always hold."""

from __future__ import annotations

import math
from itertools import pairwise

import numpy as np
import numpy.typing as npt
import pytest
import shapely
from hypothesis import assume, given, settings
from hypothesis import strategies as st
from shapely import Polygon

from app.mechanics.plane import FAR_MM, NOTHING, Axial, Body, Spot, at
from app.mechanics.prism_gap import farthest, gap, plane_gap, room_between
from tests.mechanics.scenes import mirrored_body, outlines, prisms, turned_body

Points = npt.NDArray[np.float64]
# Strewn so closely, the nearest two points are off by less than half of this each.
STEP_MM = 0.5
ROUNDED_MM = 0.001
# Outlines are moved apart in whole degrees: half of one makes so much of their 80 mm.
OVERLAP_OFF_MM = 0.7
FLOATS = 1e-9


def strewn(outline: Polygon) -> Points:
    """Points along an outline, worked out from its corners alone."""
    corners = list(outline.exterior.coords)
    rows: list[tuple[float, float]] = []
    for (x, y), (to_x, to_y) in pairwise(corners):
        count = max(1, math.ceil(math.hypot(to_x - x, to_y - y) / STEP_MM))
        rows += [(x + (to_x - x) * i / count, y + (to_y - y) * i / count) for i in range(count)]
    return np.array(rows)


def inside(points: Points, outline: Polygon) -> npt.NDArray[np.bool_]:
    """Which points lie inside, by counting the sides that a ray crosses."""
    crossed = np.zeros(len(points), dtype=np.int64)
    for (x, y), (to_x, to_y) in pairwise(outline.exterior.coords):
        if y != to_y:
            between = (points[:, 1] < y) != (points[:, 1] < to_y)
            at_x = x + (points[:, 1] - y) * (to_x - x) / (to_y - y)
            crossed += between & (points[:, 0] < at_x)
    odd: npt.NDArray[np.bool_] = crossed % 2 == 1
    return odd


def nearest_strewn(one: Points, other: Points) -> float:
    return float(np.sqrt(((one[:, None, :] - other[None, :, :]) ** 2).sum(axis=2)).min())


def in_space(outline: Polygon, along: Axial) -> Points:
    """Points over the wall and both ends of a prism; an inside is no nearer to anything than the wall is."""
    edge = strewn(outline)
    left, bottom, right, top = outline.bounds
    grid = np.array([(x, y) for x in np.arange(left, right, 2.0) for y in np.arange(bottom, top, 2.0)])
    face = np.vstack((edge, grid[inside(grid, outline)])) if len(grid) else edge
    levels = np.linspace(*along, max(2, math.ceil((along[1] - along[0]) / 2.0) + 1))
    wall = [np.column_stack((edge, np.full(len(edge), level))) for level in levels]
    ends = [np.column_stack((face, np.full(len(face), level))) for level in along]
    return np.vstack(wall + ends)


@given(outlines(), outlines())
def test_outlines_are_as_far_apart_as_the_nearest_points_strewn_over_them(
    one: Polygon, other: Polygon
) -> None:
    points, others = strewn(one), strewn(other)
    apart = not inside(points, other).any() and not inside(others, one).any()
    assume(apart and nearest_strewn(points, others) > STEP_MM)

    assert plane_gap(one, other) == pytest.approx(nearest_strewn(points, others), abs=STEP_MM)


@settings(max_examples=40)
@given(prisms(), prisms())
def test_prisms_are_as_far_apart_as_the_nearest_points_in_space(one: Body, other: Body) -> None:
    assert isinstance(one.outer, Polygon)
    assert isinstance(other.outer, Polygon)
    found = room_between(one, other).low
    assume(found > 0)
    points, others = in_space(one.outer, one.axial_outer), in_space(other.outer, other.axial_outer)

    nearest = min(nearest_strewn(part, others) for part in np.array_split(points, 1 + len(points) // 500))

    assert nearest - 2.0 <= found <= nearest + FLOATS


@given(prisms(), prisms())
def test_a_gap_is_below_zero_exactly_where_a_point_lies_in_both(one: Body, other: Body) -> None:
    shared = shapely.intersection(one.outer, other.outer)
    along = min(one.axial_outer[1], other.axial_outer[1]) - max(one.axial_outer[0], other.axial_outer[0])
    assume(shared.is_empty or shared.area > 1)
    assume(abs(along) > ROUNDED_MM)

    assert (gap(one, other).high < 0) is (not shared.is_empty and along > 0)


# In whole micrometres: an outline widened by next to nothing at all comes back empty.
@given(prisms(), prisms(), st.integers(0, 15_000), st.integers(0, 10_000))
def test_growing_a_body_never_grows_a_gap(one: Body, other: Body, by_um: int, along_um: int) -> None:
    by, along = by_um / 1000, along_um / 1000
    outline, (start, end) = one.outer.buffer(by), one.axial_outer
    assert isinstance(outline, Polygon)
    larger = Body("grown", outline, outline, (start - along, end + along), (start - along, end + along))

    assert room_between(larger, other).low <= room_between(one, other).low + FLOATS


@given(prisms(), prisms(), st.floats(-180, 180))
def test_turning_or_mirroring_the_whole_scene_changes_nothing(one: Body, other: Body, degrees: float) -> None:
    before = room_between(one, other).low

    assert room_between(turned_body(one, degrees), turned_body(other, degrees)).low == pytest.approx(
        before, abs=OVERLAP_OFF_MM if before < 0 else FLOATS
    )
    assert room_between(mirrored_body(one), mirrored_body(other)).low == pytest.approx(
        before, abs=OVERLAP_OFF_MM if before < 0 else FLOATS
    )


@given(prisms(), prisms())
def test_a_gap_is_the_same_from_either_side(one: Body, other: Body) -> None:
    assert room_between(one, other).low == pytest.approx(room_between(other, one).low, abs=FLOATS)


@given(outlines(), st.tuples(st.floats(-80, 80), st.floats(-80, 80)), st.floats(0, 9), st.floats(0, 360))
def test_a_point_at_a_spot_is_never_further_away_than_said(
    outline: Polygon, centre: tuple[float, float], off: float, bearing: float
) -> None:
    edge = at(off, bearing)
    there = shapely.Point(centre[0] + edge[0], centre[1] + edge[1])
    depth = there.distance(outline.exterior) if outline.covers(there) else 0.0

    assert there.distance(outline) - depth <= farthest(Spot(centre, off), outline) + FLOATS


def test_two_prisms_side_by_side_are_as_far_apart_as_their_outlines() -> None:
    arm = Body("arm", shapely.box(0, -9, 150, 9), shapely.box(0, -9, 150, 9), (0, 6), (0, 6))
    ear = Body("ear", shapely.box(40, 14, 60, 30), shapely.box(40, 14, 60, 30), (-4, 14), (-4, 14))

    assert gap(arm, ear).ends == (5, 5)


def test_two_prisms_one_before_the_other_are_apart_along_the_axle() -> None:
    arm = Body("arm", shapely.box(0, -9, 150, 9), shapely.box(0, -9, 150, 9), (-13, -8), (-13, -8))
    ear = Body("ear", shapely.box(40, 0, 60, 30), shapely.box(40, 0, 60, 30), (-4.5, 14), (-4.5, 14))

    assert gap(arm, ear).ends == (3.5, 3.5)


def test_a_corner_apart_in_both_views_is_a_slanting_distance() -> None:
    arm = Body("arm", shapely.box(0, -9, 150, 9), shapely.box(0, -9, 150, 9), (0, 6), (0, 6))
    ear = Body("ear", shapely.box(40, 13, 60, 30), shapely.box(40, 13, 60, 30), (9, 14), (9, 14))

    assert gap(arm, ear).ends == (5, 5)


def test_what_may_be_anywhere_between_leaves_a_gap_from_worst_to_best() -> None:
    arm = Body("arm", shapely.box(0, -9, 150, 9), shapely.box(0, -9, 150, 9), (0, 6), (0, 6))
    bolt = Body("bolt", shapely.box(40, 12, 60, 40), shapely.box(49, 20, 51, 22), (-4, 14), (-3, 9))

    assert gap(arm, bolt).ends == (3, 11)


def test_nothing_is_far_from_everything() -> None:
    arm = Body("arm", shapely.box(0, -9, 150, 9), shapely.box(0, -9, 150, 9), (0, 6), (0, 6))
    nothing = Body("nothing", NOTHING, NOTHING, (0, 6), None)

    assert room_between(arm, nothing).low == FAR_MM
