"""A point seen from the axle, as places along the stay and beside it."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from app.facts.span import Span
from app.mechanics.polar import along, beside

DISTANCES = st.integers(5_000, 260_000)
BEARINGS = st.integers(-45_000, 180_000)
A_MILLIONTH_OF_A_MICROMETRE = 1e-9


def test_a_point_straight_above_the_axle_is_no_way_along_the_stay() -> None:
    distance, bearing = Span.exactly(56), Span.exactly(90)

    assert beside(distance, bearing) == (56, 56)
    assert along(distance, bearing) == pytest.approx((0, 0), abs=A_MILLIONTH_OF_A_MICROMETRE)


def test_a_range_of_bearings_over_the_top_reaches_the_top() -> None:
    low, high = beside(Span.exactly(100), Span.between(60, 150))

    assert low == pytest.approx(50)
    assert high == 100


def test_a_range_of_bearings_around_the_stay_reaches_as_far_along_it_as_the_point_is_away() -> None:
    low, high = along(Span.exactly(100), Span.between(-45, 60))

    assert low == pytest.approx(50)
    assert high == 100


def test_bearings_up_to_straight_behind_reach_all_the_way_back() -> None:
    low, _ = along(Span.exactly(100), Span.between(120, 180))

    assert low == -100


@given(st.tuples(DISTANCES, DISTANCES), st.tuples(BEARINGS, BEARINGS), st.floats(0, 1), st.floats(0, 1))
def test_every_point_of_a_reading_lies_between_the_ends(
    distances: tuple[int, int], bearings: tuple[int, int], at_distance: float, at_bearing: float
) -> None:
    distance, bearing = Span(*sorted(distances)), Span(*sorted(bearings))
    r = (distance.low + at_distance * distance.width) / 1000
    angle = math.radians((bearing.low + at_bearing * bearing.width) / 1000)

    x_low, x_high = along(distance, bearing)
    y_low, y_high = beside(distance, bearing)

    slack = A_MILLIONTH_OF_A_MICROMETRE
    assert x_low - slack <= r * math.cos(angle) <= x_high + slack
    assert y_low - slack <= r * math.sin(angle) <= y_high + slack
