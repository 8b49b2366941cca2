"""How stays fall, lean inward, and grow."""

from __future__ import annotations

import math
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from app.facts.span import Span
from app.mechanics.stays import (
    band_diameter,
    enclosed_deg,
    fall_deg,
    further_on,
    per_mm,
    perimeter,
    toe_in_deg,
)
from tests.mechanics.stay_scenes import X, narrower, spans


def test_cranks_above_the_axle_make_a_stay_rise() -> None:
    assert fall_deg(drop_mm=-40, length_mm=410) == -fall_deg(drop_mm=40, length_mm=410) < 0


def test_a_seatstay_that_joins_higher_up_encloses_more() -> None:
    low, high = (
        enclosed_deg(drop_mm=70, length_mm=430, seat_tube_deg=73, joins_up_mm=up) for up in (400, 500)
    )

    assert low < high


def test_a_round_stay_is_as_far_around_as_a_circle() -> None:
    low, high = perimeter(section="round", width_mm=X(20), height_mm=X(20)).ends

    assert low <= math.pi * 20 <= high


def test_the_way_around_an_oval_is_that_of_many_short_sides() -> None:
    corners = [
        (15 * math.cos(2 * math.pi * step / 5000), 8 * math.sin(2 * math.pi * step / 5000))
        for step in range(5001)
    ]
    around = sum(math.dist(one, other) for one, other in pairwise(corners))

    low, _ = perimeter(section="oval", width_mm=X(30), height_mm=X(16)).ends

    assert low == pytest.approx(around, abs=0.01)


def test_a_rectangular_stay_is_twice_as_far_around_as_width_and_height() -> None:
    assert perimeter(section="rectangular", width_mm=X(20), height_mm=X(34)) == X(108)


def test_a_band_around_a_round_stay_has_its_diameter() -> None:
    low, high = band_diameter(perimeter(section="round", width_mm=X(19), height_mm=X(19))).ends

    assert low <= 19 <= high


def test_between_two_places_a_stay_grows_evenly() -> None:
    """Half way from 14 mm at 100 to 18 mm at 180, 0.05 mm for each, it is 16 mm thick."""
    halfway = further_on(reading_mm=X(14), per_mm=X("0.05"), read_at_mm=X(100), place_mm=X(140))

    assert halfway == X(16)


def test_a_long_stay_turns_inward_less() -> None:
    draws_in = Span.between(12, 45)

    short, long = (toe_in_deg(draws_in_mm=draws_in, length_mm=X(length)) for length in (410, 900))

    assert long.low < short.low
    assert long.high < short.high


@given(spans(5_000, 60_000), spans(0, 100), spans(0, 300_000), spans(0, 300_000), st.data())
def test_a_closer_reading_lies_inside_the_wider_one(
    reading: Span, grows: Span, read_at: Span, place: Span, data: st.DataObject
) -> None:
    wide = further_on(reading_mm=reading, per_mm=grows, read_at_mm=read_at, place_mm=place)

    close = further_on(
        reading_mm=data.draw(narrower(reading)),
        per_mm=data.draw(narrower(grows)),
        read_at_mm=data.draw(narrower(read_at)),
        place_mm=data.draw(narrower(place)),
    )

    assert wide.holds(close)


@given(spans(0, 45_000), spans(250_000, 1_200_000), st.data())
def test_a_closer_length_gives_a_slope_inside_the_wider_one(
    draws_in: Span, length: Span, data: st.DataObject
) -> None:
    close = data.draw(narrower(length))

    assert per_mm(draws_in_mm=draws_in, length_mm=length).holds(per_mm(draws_in_mm=draws_in, length_mm=close))
