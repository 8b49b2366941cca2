"""The force at the end of a torque arm."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from app.facts.span import Span
from app.mechanics.arm_force import (
    anchor_force,
    force_allowed,
    phase_torque,
    push_bearing_deg,
    shorted_torque,
)

LENGTHS = st.integers(20_000, 300_000)


@pytest.mark.parametrize(
    ("torque_nm", "lever_mm", "force_n"), [(40, 100, 400), (20, 80, 250), (60, 120, 500), (80, 200, 400)]
)
def test_force_is_torque_over_lever(torque_nm: int, lever_mm: int, force_n: int) -> None:
    """Derivation: 1 N·m is 1 N at 1000 mm."""
    force = anchor_force(torque_nm=Span.exactly(torque_nm), lever_mm=Span.exactly(lever_mm))

    assert force == Span.exactly(force_n)


def test_a_third_of_a_newton_is_rounded_outward() -> None:
    assert anchor_force(torque_nm=Span.exactly(80), lever_mm=Span.exactly(150)) == Span(533_333, 533_334)


def test_the_shortest_lever_carries_the_most() -> None:
    force = anchor_force(torque_nm=Span.exactly(40), lever_mm=Span.between(100, 200))

    assert force == Span.between(200, 400)


def test_turning_the_other_way_pulls_the_other_way() -> None:
    force = anchor_force(torque_nm=Span.between(-40, 40), lever_mm=Span.exactly(100))

    assert force == Span.between(-400, 400)


def test_an_arm_without_length_is_refused() -> None:
    with pytest.raises(ValueError, match="longer than 0 mm"):
        anchor_force(torque_nm=Span.exactly(40), lever_mm=Span.between(0, 100))


@pytest.mark.parametrize(("factor", "allowed_n"), [("1.5", 800), ("2", 600), ("1.1", "1090.90909")])
def test_a_rating_over_its_factor_is_what_the_arm_may_bear(factor: str, allowed_n: int | str) -> None:
    allowed = force_allowed(rated_n=Span.exactly(1200), factor=Span.exactly(factor))

    assert allowed == Span.exactly(allowed_n)


@given(st.integers(1, 200_000), LENGTHS)
def test_force_times_lever_is_the_torque_again(torque: int, lever: int) -> None:
    force = anchor_force(torque_nm=Span(torque, torque), lever_mm=Span(lever, lever))

    assert force.low * lever <= torque * 1_000_000 <= force.high * lever
    assert force.width <= 1


@given(st.integers(-200_000, 200_000), st.integers(0, 50_000), LENGTHS)
def test_turning_the_torque_round_mirrors_the_force(torque: int, wide: int, lever: int) -> None:
    one, other = Span(torque, torque + wide), Span(-torque - wide, -torque)

    force = anchor_force(torque_nm=one, lever_mm=Span(lever, lever))

    assert anchor_force(torque_nm=other, lever_mm=Span(lever, lever)) == -force


@given(st.floats(-90, 180))
def test_braking_presses_the_opposite_way(bearing_deg: float) -> None:
    driving, braking = (push_bearing_deg(bearing_deg, driving=driving) for driving in (True, False))

    assert driving - braking == pytest.approx(180)


def torque_of(kind: str | None, kv: int = 9) -> Span:
    return phase_torque(kv_rpm_per_v=Span.exactly(kv), phase_current_a=Span.exactly(40), kind=kind)


def test_a_faster_winding_pulls_less_on_the_same_amperes() -> None:
    slow, fast = (torque_of("six_step", kv) for kv in (6, 12))

    assert slow.low == pytest.approx(2 * fast.low, abs=2)


def test_amperes_of_no_stated_kind_are_any_of_the_three() -> None:
    unknown = torque_of(None)

    assert all(unknown.holds(torque_of(kind)) for kind in ("peak", "six_step", "rms"))
    assert (unknown.low, unknown.high) == (torque_of("peak").low, torque_of("rms").high)


@pytest.mark.parametrize(("kind", "peak_a"), [("peak", 1.0), ("rms", 2**0.5)])
def test_the_torque_is_that_of_three_phases_added_up(kind: str, peak_a: float) -> None:
    """Averages emf times current of three phases over a turn, with one volt to ten turns a minute."""
    turns = 3600
    emf_peak = 10 / 3**0.5
    power = 0.0
    for step in range(turns):
        for phase in range(3):
            wave = math.sin(2 * math.pi * (step / turns - phase / 3))
            power += emf_peak * wave * 40 * peak_a * wave / turns
    rad_per_s = 2 * math.pi * 90 / 60

    low, high = torque_of(kind).ends

    assert low - 0.001 <= power / rad_per_s <= high + 0.001


def test_the_torque_of_joined_leads_does_not_depend_on_the_turns() -> None:
    """Twice the turns give half the speed constant and four times the inductance."""
    few = shorted_torque(kv_rpm_per_v=Span.exactly(10), inductance_mh=Span.exactly("0.2"), pole_pairs=22)
    many = shorted_torque(kv_rpm_per_v=Span.exactly(5), inductance_mh=Span.exactly("0.8"), pole_pairs=22)

    assert few == many


def test_the_torque_of_joined_leads_is_the_largest_over_all_speeds() -> None:
    kv, ohm, henry, pairs = 8.38, 0.148, 0.42e-3, 22
    emf = 30 / math.pi / kv

    def braked(rad_per_s: float) -> float:
        reactance = pairs * rad_per_s * henry
        return emf**2 * rad_per_s * ohm / (ohm**2 + reactance**2)

    largest = max(braked(step / 100) for step in range(1, 20_000))

    worst = shorted_torque(
        kv_rpm_per_v=Span.exactly("8.38"), inductance_mh=Span.exactly("0.42"), pole_pairs=pairs
    )
    assert worst.ends[1] == pytest.approx(largest, abs=0.002)
