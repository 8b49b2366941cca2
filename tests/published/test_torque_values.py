"""Torque at the axle and what holds it, against published numbers and worked tables; sources beside each."""

from __future__ import annotations

import pytest

from app.facts.span import Exact, Span
from app.mechanics.arm_force import anchor_force, phase_torque, push_bearing_deg
from app.mechanics.flats import Contact, bolt_load, flat_chord, flat_force, flat_pressure, friction_torque
from app.mechanics.stays import band_diameter, enclosed_deg, fall_deg, perimeter

X = Span.exactly
UP, DOWN = 90, -90


def middle(span: Span) -> float:
    return (span.low + span.high) / 2000


# Derived: a flat's length is the chord of its axle at half the distance across flats.
@pytest.mark.parametrize(
    ("diameter_mm", "across_mm", "chord_mm"),
    [(10, 8, 6.0), (12, 10, 6.633), (14, 10, 9.798), (16, 10, 12.490)],
)
def test_flats_are_as_long_as_their_chord(diameter_mm: int, across_mm: int, chord_mm: float) -> None:
    chord = flat_chord(diameter_mm=X(diameter_mm), across_flats_mm=X(across_mm))

    assert middle(chord) == pytest.approx(chord_mm, abs=0.001)


# Derived, worked through for one dropout: torque in N·m, plate and axle in mm; forces in N, pressure in MPa.
FLATS = [
    ((20, 12, 6), (3015, 4523, 455)),
    ((20, 12, 10), (3015, 4523, 273)),
    ((20, 14, 6), (2041, 3062, 208)),
    ((40, 12, 6), (6030, 9045, 909)),
    ((40, 14, 6), (4082, 6124, 417)),
]


@pytest.mark.parametrize(("given", "expected"), FLATS)
def test_flats_push_and_press_as_the_table_says(
    given: tuple[int, int, int], expected: tuple[int, int, int]
) -> None:
    torque, diameter, thickness = (X(value) for value in given)
    chord = flat_chord(diameter_mm=diameter, across_flats_mm=X(10))

    contacts: tuple[Contact, Contact] = ("edges", "triangle")
    found = [flat_force(torque_nm=torque, chord_mm=chord, contact=contact) for contact in contacts]
    found.append(
        flat_pressure(torque_nm=torque, diameter_mm=diameter, across_flats_mm=X(10), thickness_mm=thickness)
    )

    assert [middle(span) for span in found] == pytest.approx(expected, abs=1)


# Derived with the trade's factor of 0.2 for dry threads: load is torque over factor and diameter.
@pytest.mark.parametrize(
    ("torque_nm", "thread_mm", "load_kn"),
    [
        pytest.param(5, 5, 5.0, id="clamp bolt M5"),
        pytest.param(8, 6, 6.7, id="arm bolt M6"),
        pytest.param("6.2", 5, 6.2, id="rotor bolt M5"),
        pytest.param(12, 12, 5.0, id="thru-axle M12"),
        pytest.param(40, 12, 16.7, id="axle nut M12"),
    ],
)
def test_a_bolt_presses_with_its_torque_over_a_fifth_of_its_thread(
    torque_nm: Exact, thread_mm: int, load_kn: float
) -> None:
    load = bolt_load(torque_nm=X(torque_nm), thread_mm=X(thread_mm))

    assert middle(load) / 1000 == pytest.approx(load_kn, abs=0.05)


def test_two_faces_under_a_tight_m12_nut_hold_42_newton_metres() -> None:
    """Derived: 16.7 kN, friction of 0.15 on two faces, 8.5 mm from the middle."""
    load = bolt_load(torque_nm=X(40), thread_mm=X(12))

    assert middle(friction_torque(load_n=load, radius_mm=X("8.5"))) == pytest.approx(42.5, abs=0.5)


def test_an_oval_stay_of_30_by_16_is_73_9_mm_around() -> None:
    """Section: "A few random shots", waltworks.com, June 2009; the way around by Ramanujan's formula."""
    around = perimeter(section="oval", width_mm=X(30), height_mm=X(16))

    assert middle(around) == pytest.approx(73.9, abs=0.1)
    assert middle(band_diameter(around)) == pytest.approx(23.5, abs=0.1)


@pytest.mark.parametrize(
    ("drop_mm", "length_mm", "falls_deg"),
    [
        pytest.param(70, 430, 9.37, id="derived"),
        # "Concept bike revisited, part 2", g-tedproductions.blogspot.com, January 2020.
        pytest.param(72.5, 440, 9.48, id="a published gravel frame"),
        # "My road bike", meriwethercycles.com, February 2014.
        pytest.param(60, 425, 8.12, id="a published road frame"),
    ],
)
def test_a_chainstay_falls_by_the_drop_of_its_cranks(
    drop_mm: float, length_mm: float, falls_deg: float
) -> None:
    assert fall_deg(drop_mm=drop_mm, length_mm=length_mm) == pytest.approx(falls_deg, abs=0.01)


def test_chainstay_and_seatstay_of_a_usual_frame_enclose_65_degrees() -> None:
    """Derived: stay 430, drop 70, seat tube at 73°, joined 500 mm up it; the seatstay rises by 55.7°."""
    enclosed = enclosed_deg(drop_mm=70, length_mm=430, seat_tube_deg=73, joins_up_mm=500)

    assert enclosed == pytest.approx(65.1, abs=0.3)


def test_driving_presses_an_arm_that_lies_forward_up_and_braking_presses_it_down() -> None:
    """Derived: seen from the left the wheel turns anticlockwise, and pushes the axle clockwise."""
    along_the_stay = 0

    assert push_bearing_deg(along_the_stay, driving=True) == UP
    assert push_bearing_deg(along_the_stay, driving=False) == DOWN


@pytest.mark.parametrize(("kind", "share"), [("peak", 0.866), ("six_step", 1.0), ("rms", 1.225)])
def test_an_ampere_is_worth_what_its_kind_says(kind: str, share: float) -> None:
    """Share: derived from three phases. 9.549: "Motor constants", piglix.com/piglix/Motor_constants."""
    torque = phase_torque(kv_rpm_per_v=X(1), phase_current_a=X(100), kind=kind)

    assert middle(torque) / 100 == pytest.approx(9.549 * share, abs=0.005)


def test_a_peak_ampere_gives_8_27_newton_metres_over_the_speed_constant() -> None:
    """Derived; a number that the trade quotes."""
    torque = phase_torque(kv_rpm_per_v=X(1), phase_current_a=X(100), kind="peak")

    assert middle(torque) / 100 == pytest.approx(8.27, abs=0.005)


def test_a_brake_s_100_newton_metres_load_a_tab_with_1400_newtons() -> None:
    """Derived: at 72 mm from the axle; it was made for that, both ways."""
    force = anchor_force(torque_nm=X(100), lever_mm=X(72))

    assert middle(force) == pytest.approx(1400, abs=15)
