"""What flats in a slot and nuts on a dropout hold when there is no arm."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from app.facts.span import Span
from app.mechanics.flats import bolt_load, flat_chord, flat_force, flat_pressure, friction_torque

M12, FLATS, PLATE = Span.exactly(12), Span.exactly(10), Span.exactly(6)
TORQUES = st.integers(1_000, 100_000)
PLATES = st.integers(2_000, 15_000)


def pressure(torque_nm: Span, thickness_mm: Span = PLATE, across_mm: Span = FLATS) -> Span:
    return flat_pressure(
        torque_nm=torque_nm, diameter_mm=M12, across_flats_mm=across_mm, thickness_mm=thickness_mm
    )


def test_flats_as_far_apart_as_the_axle_is_thick_are_no_flats() -> None:
    with pytest.raises(ValueError, match="leave nothing of an axle"):
        flat_chord(diameter_mm=M12, across_flats_mm=M12)


def test_a_pressure_that_rises_to_the_edge_pushes_half_as_much_again_as_the_edges_alone() -> None:
    chord, torque = Span.exactly(6), Span.exactly(20)

    forces = [
        flat_force(torque_nm=torque, chord_mm=chord, contact=contact)
        for contact in ("edges", "triangle", "half_flats")
    ]

    assert forces == [Span(3_333_333, 3_333_334), Span.exactly(5000), Span(6_666_666, 6_666_667)]


def test_the_pressure_at_the_edge_carries_the_torque_that_it_was_worked_out_from() -> None:
    """Adds the triangle up in thin strips, both flats, and compares with the torque."""
    chord = math.sqrt(12**2 - 10**2)
    peak = pressure(Span.exactly(20)).ends[0]

    strips = 20_000
    width = chord / 2 / strips
    arms = [(strip + 0.5) * width for strip in range(strips)]
    torque = 2 * sum(peak * arm / (chord / 2) * arm * width * PLATE.ends[0] for arm in arms) / 1000

    assert torque == pytest.approx(20, rel=1e-4)


@given(TORQUES, PLATES, st.integers(0, 2_000))
def test_a_thicker_plate_is_pressed_less(torque: int, plate: int, more: int) -> None:
    thin = pressure(Span(torque, torque), Span(plate, plate))
    thick = pressure(Span(torque, torque), Span(plate + more, plate + more))

    assert thick.low <= thin.low
    assert thick.high <= thin.high


@given(TORQUES, PLATES, st.integers(0, 20_000), st.integers(0, 3_000))
def test_a_closer_reading_lies_inside_the_wider_one(torque: int, plate: int, wide: int, wider: int) -> None:
    close = pressure(Span(torque, torque), Span(plate, plate))
    loose = pressure(Span(torque, torque + wide), Span(plate, plate + wider))

    assert loose.holds(close)


def test_nuts_hold_more_the_tighter_they_are() -> None:
    loads = [bolt_load(torque_nm=Span.exactly(nm), thread_mm=M12) for nm in (20, 40)]

    held = [friction_torque(load_n=load, radius_mm=Span.exactly("8.5")) for load in loads]

    assert held[0].high < held[1].low
