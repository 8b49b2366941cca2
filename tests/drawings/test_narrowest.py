"""The narrowest place of a gap is where both bodies say, and as wide as mechanics says."""

from __future__ import annotations

import math

import pytest
import shapely

from app.drawings.narrowest import Narrowest, narrowest
from app.mechanics.plane import NOTHING, Body, Shape
from app.mechanics.prism_gap import gap

ARM = shapely.box(0, -8, 150, 8)


def body(outer: Shape, axial: tuple[float, float] = (0.0, 6.0)) -> Body:
    return Body("body", outer, outer, axial, axial)


def found(*bodies: Body) -> Narrowest:
    near = narrowest(body(ARM), bodies)
    assert near
    return near


def test_two_that_are_apart_are_nearest_where_their_edges_are() -> None:
    near = found(body(shapely.box(40, 11, 60, 30)))

    assert near.plane == 3.0
    assert (near.start[1], near.end[1]) == (8.0, 11.0)
    assert near.start[0] == near.end[0]


def test_of_several_bodies_the_nearest_is_found() -> None:
    near = found(body(shapely.box(40, 20, 60, 30)), body(shapely.box(160, 0, 170, 5)), body(NOTHING))

    assert near.gap == 10.0
    assert near.end[0] == 160.0


@pytest.mark.parametrize("lowest", [7.0, 2.0, -1.0])
def test_an_overlap_is_measured_by_the_move_that_would_part_the_two(lowest: float) -> None:
    near = found(body(shapely.box(40, lowest, 60, 40)))

    assert near.plane == pytest.approx(lowest - 8)
    assert math.dist(near.start, near.end) == pytest.approx(8 - lowest)
    assert near.start[0] == pytest.approx(near.end[0])


@pytest.mark.parametrize(
    "other",
    [
        pytest.param(body(shapely.box(40, 11, 60, 30)), id="apart in the side view"),
        pytest.param(body(shapely.box(40, 5, 60, 30), (9.0, 20.0)), id="apart along the axle"),
        pytest.param(body(shapely.box(40, 11, 60, 30), (10.0, 20.0)), id="apart in both"),
        pytest.param(body(shapely.box(40, 5, 60, 30), (5.0, 20.0)), id="overlapping"),
    ],
)
def test_it_is_as_wide_as_the_gap_of_the_two_prisms(other: Body) -> None:
    low, _ = gap(body(ARM), other).ends

    assert found(other).gap == pytest.approx(low, abs=0.001)


def test_there_is_none_beside_nothing() -> None:
    assert narrowest(body(ARM), [body(NOTHING)]) is None
