"""How far a torque arm and a caliper are apart, and how sure that is."""

import math
from typing import TypeAlias

import pytest
from hypothesis import given
from hypothesis import strategies as st
from shapely import Point, box

from app.facts.span import Span
from app.mechanics.caliper_clearance import bar_gap, disc_gap, plane_gap, prism_gap, spare

Scene: TypeAlias = tuple[Span, Span, Span, Span, Span]

DISC, HALF_WIDTH, END = Span.exactly(22), Span.exactly(9), Span.exactly(150)
ONE_STEP = 0.001
TWO_STEPS = 0.002


def gap_at(nearest_mm: str, bearing_deg: str) -> Span:
    return plane_gap(
        nearest_mm=Span.exactly(nearest_mm),
        bearing_deg=Span.exactly(bearing_deg),
        disc_radius_mm=DISC,
        half_width_mm=HALF_WIDTH,
        end_mm=END,
    )


def bar_gap_at(nearest_mm: str, bearing_deg: str) -> float:
    gap = bar_gap(
        distance_mm=Span.exactly(nearest_mm),
        bearing_deg=Span.exactly(bearing_deg),
        half_width_mm=HALF_WIDTH,
        end_mm=END,
    )
    assert gap.width <= 2
    return (gap.low + gap.high) / 2000


def test_above_the_axle_the_disc_is_nearest() -> None:
    assert gap_at("47.3", "90") == Span.exactly("25.3")


def test_beside_the_stay_the_bar_is_nearest() -> None:
    gap = gap_at("60", "30")

    assert gap.holds(Span.exactly(21))
    assert gap.width <= 2


def test_a_point_below_the_stay_is_as_far_from_the_bar_as_one_above_it() -> None:
    assert gap_at("60", "-30") == gap_at("60", "30")


def test_a_point_in_the_bar_is_below_zero() -> None:
    assert bar_gap_at("60", "0") == pytest.approx(-9, abs=ONE_STEP)


def test_a_point_beyond_the_end_of_the_bar_is_past_it() -> None:
    assert bar_gap_at("154", "0") == pytest.approx(4, abs=ONE_STEP)


def test_a_point_in_the_disc_is_below_zero() -> None:
    assert disc_gap(distance_mm=Span.exactly(20), radius_mm=DISC) == Span.exactly(-2)


@pytest.mark.parametrize("bearing_deg", [-40, -5, 0, 3, 17, 35, 60, 88, 90, 121, 180])
@pytest.mark.parametrize("nearest_mm", [6, 23, 47, 98, 149, 151, 200])
def test_the_bar_is_as_far_away_as_an_outline_says(nearest_mm: int, bearing_deg: int) -> None:
    angle = math.radians(bearing_deg)
    point = Point(nearest_mm * math.cos(angle), nearest_mm * math.sin(angle))
    bar = box(0, -9, 150, 9)

    gap_mm = bar_gap_at(str(nearest_mm), str(bearing_deg))

    outline_mm = bar.distance(point) or -bar.exterior.distance(point)
    assert gap_mm == pytest.approx(outline_mm, abs=TWO_STEPS)


@pytest.mark.parametrize(
    ("plane", "axial", "gap"),
    [
        pytest.param(5, -12, 5, id="apart in the side view"),
        pytest.param(-4, 3, 3, id="apart along the axle"),
        pytest.param(-4, -1, -1, id="together in both"),
        pytest.param(3, 4, 4, id="apart in both, and no further than the true 5"),
    ],
)
def test_the_larger_gap_keeps_two_bodies_apart(plane: int, axial: int, gap: int) -> None:
    assert prism_gap(plane_mm=Span.exactly(plane), axial_mm=Span.exactly(axial)) == Span.exactly(gap)


def test_room_to_run_in_one_view_is_enough() -> None:
    room = spare(
        plane_mm=Span.exactly("1.5"),
        axial_mm=Span.exactly("1.2"),
        plane_wanted_mm=Span.exactly(2),
        axial_wanted_mm=Span.exactly(1),
    )

    assert room == Span.exactly("0.2")


def spans(low: int, high: int) -> st.SearchStrategy[Span]:
    ends = st.tuples(st.integers(low, high), st.integers(low, high))
    return ends.map(lambda pair: Span(min(pair), max(pair)))


@st.composite
def narrower(draw: st.DrawFn, span: Span) -> Span:
    low = draw(st.integers(span.low, span.high))
    return Span(low, draw(st.integers(low, span.high)))


READINGS = st.tuples(
    spans(5_000, 200_000),
    spans(-45_000, 180_000),
    spans(10_000, 60_000),
    spans(3_000, 40_000),
    spans(60_000, 260_000),
)


def gap_of(scene: Scene) -> Span:
    nearest, bearing, disc, half_width, end = scene
    return plane_gap(
        nearest_mm=nearest, bearing_deg=bearing, disc_radius_mm=disc, half_width_mm=half_width, end_mm=end
    )


@given(READINGS, st.data())
def test_a_narrower_reading_gives_a_gap_inside_the_wider_one(wide: Scene, data: st.DataObject) -> None:
    nearest, bearing, disc, half_width, end = (data.draw(narrower(span)) for span in wide)

    assert gap_of(wide).holds(gap_of((nearest, bearing, disc, half_width, end)))


@given(READINGS, st.data())
def test_the_true_gap_of_every_bike_in_the_reading_lies_in_the_span(wide: Scene, data: st.DataObject) -> None:
    r, degrees, disc, half, end = (data.draw(st.integers(span.low, span.high)) / 1000 for span in wide)
    angle = math.radians(degrees)
    past_end = max(-r * math.cos(angle), r * math.cos(angle) - end)
    past_side = abs(r * math.sin(angle)) - half
    inside = past_end <= 0 and past_side <= 0
    to_bar = max(past_end, past_side) if inside else math.hypot(max(past_end, 0), max(past_side, 0))

    true_mm = min(r - disc, to_bar)

    gap = gap_of(wide)
    assert gap.low / 1000 - 1e-9 <= true_mm <= gap.high / 1000 + 1e-9


@given(READINGS, st.data())
def test_a_larger_disc_or_a_wider_bar_never_gives_more_room(scene: Scene, data: st.DataObject) -> None:
    nearest, bearing, disc, half_width, end = scene
    more = Span(*[data.draw(st.integers(0, 20_000))] * 2)

    grown = gap_of((nearest, bearing, disc + more, half_width + more, end + more))

    assert grown.low <= gap_of(scene).low
    assert grown.high <= gap_of(scene).high
