"""Where caliper mounts put their bolts: derived from published lengths, whose source stands beside each.

IS tab      frame builders' list, ISO disc mounts (51 × 79.1 × 39.9 mm, ± 0.1),
            bikebuilding.blogspot.com/2006/12/braze-on-distances-index.html
post mount  P. Verdone, peterverdone.com/disc-brake-mounting-2026/
turn        P. Verdone, peterverdone.com/disc-brake-mounting-systems/
"""

from __future__ import annotations

import math
from itertools import product

import pytest

from app.facts.span import Span
from app.mechanics.mounts import (
    IS_TO_POST_DEG,
    flat_bolts,
    flat_ends_mm,
    is_angle_deg,
    is_bolts,
    native_rotor,
    post_bolts,
)
from app.mechanics.plane import at, polar
from app.rules.brake.caliper_readings import tables_of
from tests.demo import demo_standards

TABLES = tables_of(demo_standards())
A_HUNDREDTH, TWO_HUNDREDTHS, A_TWENTIETH, A_MICROMETRE = 0.01, 0.02, 0.05, 0.001


def test_the_tables_hold_the_published_lengths() -> None:
    assert [length.ends for length in TABLES.holes] == [(39.8, 40.0), (79.0, 79.2), (50.9, 51.1)]
    assert [length.ends[0] for length in TABLES.path] == [60, 51.811, 22.061, 74.2]


def test_the_holes_of_a_tab_enclose_an_angle_at_the_axle() -> None:
    """Frame builders' list: by the law of cosines."""
    assert is_angle_deg(39.9, 79.1, 51.0) == pytest.approx(33.759, abs=A_HUNDREDTH)


def test_the_line_of_a_tab_s_holes_passes_the_axle_at_a_distance() -> None:
    """Frame builders' list: twice the triangle's area over the pitch."""
    tab = is_bolts(TABLES.holes)

    assert tab.near[1] == pytest.approx(34.389, abs=A_HUNDREDTH)
    assert tab.far[1] == pytest.approx(34.389, abs=A_HUNDREDTH)


def test_the_holes_of_a_tab_lie_along_that_line() -> None:
    """Frame builders' list."""
    tab = is_bolts(TABLES.holes)

    assert (tab.near[0], tab.far[0]) == pytest.approx((20.233, 71.233), abs=A_HUNDREDTH)


@pytest.mark.parametrize(("end", "bearing"), [(0, 59.53), (1, 25.77)])
def test_the_holes_of_a_tab_stand_above_the_line_of_the_bolts(end: int, bearing: float) -> None:
    """Frame builders' list."""
    assert polar(is_bolts(TABLES.holes)[:2][end])[1] == pytest.approx(bearing, abs=A_HUNDREDTH)


def test_a_tenth_on_every_length_of_a_tab_moves_the_angle_by_less_than_half_a_degree() -> None:
    """Frame builders' list, worst cases of ± 0.1 mm."""
    angles = [is_angle_deg(*lengths) for lengths in product(*(span.ends for span in TABLES.holes))]

    assert (min(angles), max(angles)) == pytest.approx((33.355, 34.157), abs=A_HUNDREDTH)


def test_a_tenth_on_every_length_of_a_tab_moves_its_line_by_a_third_of_a_millimetre() -> None:
    """Frame builders' list: the line then lies 34.05 to 34.72 mm from the axle; a hole is off by no more."""
    corners = list(product(*(span.ends for span in TABLES.holes)))
    lines = [a * b * math.sin(math.radians(is_angle_deg(a, b, c))) / c for a, b, c in corners]
    holes = [(math.sqrt(a**2 - line**2), line) for (a, _, _), line in zip(corners, lines, strict=True)]
    tab = is_bolts(TABLES.holes)

    assert (min(lines), max(lines)) == pytest.approx((34.05, 34.72), abs=A_HUNDREDTH)
    assert max(math.dist(hole, tab.near) for hole in holes) <= tab.off_mm < 1


def test_the_nearest_boss_of_a_tab() -> None:
    """Frame builders' list, and an estimated boss of 9 mm around the hole."""
    assert polar(is_bolts(TABLES.holes).near)[0] - 9 == pytest.approx(30.9, abs=0.1)


@pytest.mark.parametrize(
    ("rotor", "face", "along", "distances", "between_deg"),
    [
        (140, 47.24, (1.80, 76.00), (47.27, 89.49), 55.95),
        (160, 55.90, (6.80, 81.00), (56.31, 98.42), 48.45),
        (180, 64.56, (11.80, 86.00), (65.63, 107.54), 42.75),
        (200, 73.22, (16.80, 91.00), (75.12, 116.80), 38.26),
        (203, 74.52, (17.55, 91.75), (76.56, 118.20), 37.66),
    ],
)
def test_faces_and_bolts_of_posts(
    rotor: int, face: float, along: tuple[float, float], distances: tuple[float, float], between_deg: float
) -> None:
    """P. Verdone, disc brake mounting 2026."""
    bolts = post_bolts(TABLES.path, rotor)
    (near_mm, near_deg), (far_mm, far_deg) = polar(bolts.near), polar(bolts.far)

    assert (bolts.near[1], bolts.far[1]) == pytest.approx((face, face), abs=TWO_HUNDREDTHS)
    assert (bolts.near[0], bolts.far[0]) == pytest.approx(along, abs=TWO_HUNDREDTHS)
    assert (near_mm, far_mm) == pytest.approx(distances, abs=TWO_HUNDREDTHS)
    assert near_deg - far_deg == pytest.approx(between_deg, abs=TWO_HUNDREDTHS)


@pytest.mark.parametrize("rotor", [140, 160, 180])
def test_one_size_of_rotor_moves_both_bolts_of_posts_alike(rotor: int) -> None:
    """P. Verdone, disc brake mounting 2026: a path of 60 degrees, 10 mm of radius a step."""
    small, large = post_bolts(TABLES.path, rotor), post_bolts(TABLES.path, rotor + 20)

    for before, after in zip(small[:2], large[:2], strict=True):
        assert (after[0] - before[0], after[1] - before[1]) == pytest.approx((5.000, 8.660), abs=A_MICROMETRE)


@pytest.mark.parametrize("rotor", range(140, 221, 10))
def test_the_bolts_of_posts_are_never_nearer_than_their_pitch(rotor: int) -> None:
    """P. Verdone, disc brake mounting 2026; the second bolt is our reading of it."""
    bolts = post_bolts(TABLES.path, rotor)

    assert math.dist(bolts.near, bolts.far) == pytest.approx(74.2, abs=A_MICROMETRE)


@pytest.mark.parametrize(("rotor", "nearest"), [(140, 38.3), (160, 47.3), (180, 56.6), (203, 67.6)])
def test_the_nearest_ear_on_posts(rotor: int, nearest: float) -> None:
    """P. Verdone, disc brake mounting 2026, and an estimated ear of 9 mm around the bolt."""
    assert polar(post_bolts(TABLES.path, rotor).near)[0] - 9 == pytest.approx(nearest, abs=0.1)


def test_larger_rotors_move_posts_out_and_closer_together_as_seen_from_the_axle() -> None:
    """P. Verdone, disc brake mounting 2026."""
    found = [post_bolts(TABLES.path, rotor) for rotor in range(140, 221)]
    near, far = ([polar(bolts[:2][end]) for bolts in found] for end in (0, 1))
    between = [one[1] - other[1] for one, other in zip(near, far, strict=True)]

    assert near == sorted(near, key=lambda place: place[0])
    assert far == sorted(far, key=lambda place: place[0])
    assert between == sorted(between, reverse=True)


def test_a_tab_turned_to_the_posts_looks_like_an_adapter() -> None:
    """P. Verdone, disc brake mounting systems: seven degrees; with it, what a 160 adapter looks like."""
    tab, posts = is_bolts(TABLES.holes), post_bolts(TABLES.path, 160)
    distance, bearing = polar(((tab.near[0] + tab.far[0]) / 2, tab.near[1]))
    turned = at(distance, bearing + IS_TO_POST_DEG)

    assert posts.near[1] - turned[1] == pytest.approx(16.19, abs=A_TWENTIETH)
    assert (posts.near[0] + posts.far[0]) / 2 - turned[0] == pytest.approx(2.70, abs=A_TWENTIETH)


def test_the_middle_of_a_tab_s_holes() -> None:
    """Frame builders' list."""
    tab = is_bolts(TABLES.holes)

    assert polar(((tab.near[0] + tab.far[0]) / 2, tab.near[1])) == pytest.approx(
        (57.22, 36.94), abs=A_HUNDREDTH
    )


def test_the_first_bolt_of_a_flat_mount_is_an_estimate() -> None:
    """An estimate: no published length was found."""
    bolts = flat_bolts(140)
    distance = polar(bolts.near)[0]

    assert distance - bolts.off_mm >= 31
    assert distance + bolts.off_mm <= 45.5
    assert bolts.far[0] - bolts.near[0] == pytest.approx(34)


@pytest.mark.parametrize(("rotor", "first_free"), [(140, 79), (160, 87), (180, 96)])
def test_the_stay_beyond_a_flat_mount_is_an_estimate(rotor: int, first_free: int) -> None:
    """An estimate: far bolt and 15 mm, 85 to 105 mm for the rotors in use, 7 mm off at the most."""
    assert flat_ends_mm(Span.exactly(rotor)).ends[0] == pytest.approx(first_free, abs=1)


@pytest.mark.parametrize(
    ("adapter", "native"), [("none", (180, 180)), ("plus_20", (160, 160)), ("plus_40", (140, 140))]
)
def test_an_adapter_adds_to_the_rotor_that_the_mount_was_made_for(
    adapter: str, native: tuple[float, float]
) -> None:
    """Brake mount standards, cranksmith.com/guides/brake-mount-standards: + 20 mm a step, + 40 exists."""
    assert native_rotor(Span.exactly(180), adapter).ends == native
