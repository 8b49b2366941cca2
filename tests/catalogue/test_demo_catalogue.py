"""The demo catalogue: an invented maker, large enough that every rule has something to say."""

from __future__ import annotations

from itertools import pairwise

import pytest

from app.catalogue.catalogue import KINDS
from app.catalogue.hub_parts import AxleSet
from app.facts.span import Span
from tests.demo import SEED_DATA, demo_catalogue


@pytest.mark.parametrize(
    ("plural", "least"),
    [
        ("hubs", 6),
        ("axle_sets", 9),
        ("torque_arms", 4),
        ("freehubs", 5),
        ("controllers", 4),
        ("packs", 5),
        ("sensors", 4),
    ],
)
def test_there_are_parts_enough(plural: str, least: int) -> None:
    assert len(demo_catalogue().parts(plural)) >= least


def test_the_catalogue_says_that_it_is_invented() -> None:
    assert "invented" in demo_catalogue().about.lower()
    assert "Thornbeck" in demo_catalogue().about


@pytest.mark.parametrize("plural", KINDS)
def test_every_file_says_so_too(plural: str) -> None:
    first = (SEED_DATA / "catalogue" / f"{plural}.yaml").read_text("utf-8").splitlines()[0]

    assert "nvented" in first


@pytest.mark.parametrize(("hub", "count"), [("weir", 4), ("sluice", 2)])
def test_the_direct_drives_come_in_several_windings(hub: str, count: int) -> None:
    assert len([winding for winding in demo_catalogue().windings if winding.hub == hub]) == count


@pytest.mark.parametrize("hub", ["weir", "sluice"])
def test_windings_of_a_hub_hold_the_same_copper(hub: str) -> None:
    """With the copper kept, resistance falls as the square of the speed constant rises, within rounding."""
    windings = [winding for winding in demo_catalogue().windings if winding.hub == hub]

    copper = sorted(
        winding.resistance_ohm.low * (winding.kv_rpm_per_v.low / 1000) ** 2 for winding in windings
    )

    assert copper[-1] / copper[0] < 1.02


@pytest.mark.parametrize("name", ["135-qr", "135-bolt", "141-qr", "142-thru", "148-thru"])
def test_the_usual_rear_ends_are_taken(name: str) -> None:
    assert any(axle_set.id.endswith(name) for axle_set in demo_catalogue().axle_sets)


def _takes(axle_set: AxleSet) -> Span:
    return Span(axle_set.takes_low_mm.low, axle_set.takes_high_mm.high)


@pytest.mark.parametrize(
    ("over_locknut_mm", "end", "low", "high"),
    [
        (135, "quick_release", 134, 137),
        (135, "bolt_on", 134, 137),
        (142, "thru", 141, 143),
        (148, "thru", 147, 149),
    ],
)
def test_a_rear_end_is_taken_as_far_as_agreed(over_locknut_mm: int, end: str, low: int, high: int) -> None:
    sets = [
        axle_set
        for axle_set in demo_catalogue().axle_sets
        if axle_set.end == end and axle_set.over_locknut_mm.meets(Span.exactly(over_locknut_mm))
    ]

    assert sets
    assert {_takes(axle_set) for axle_set in sets} == {Span.between(low, high)}


def test_thru_sleeves_pass_the_plain_freehubs_of_their_hub_but_not_the_torque_sensing_ones() -> None:
    catalogue = demo_catalogue()
    for axle_set in catalogue.axle_sets:
        sleeve = axle_set.sleeve_diameter_mm
        bores = [(f, f.bore_mm) for f in catalogue.freehubs if set(f.hubs) & set(axle_set.hubs) and f.bore_mm]
        for freehub, bore in bores:
            if axle_set.end == "thru" and sleeve is not None:
                assert (bore.high < sleeve.low) is freehub.torque_sensing, (axle_set.id, freehub.id)


def test_one_rotor_seat_wants_shims_and_one_is_beyond_them() -> None:
    usual = {"thru": Span.around("18.75", "0.5"), "quick_release": Span.around("15.25", "0.5")}
    off = {
        axle_set.id: round(abs(axle_set.rotor_seat_mm.low + axle_set.rotor_seat_mm.high) / 2000, 2)
        for axle_set in demo_catalogue().axle_sets
        if axle_set.rotor_seat_mm
        and not axle_set.rotor_seat_mm.meets(usual.get(axle_set.end, usual["quick_release"]))
    }

    assert off == {"weir-141-qr": 16.85, "sluice-142-thru": 21.75}


def test_some_values_are_not_given_so_that_a_rule_can_say_so() -> None:
    catalogue = demo_catalogue()

    assert any(hub.peak_torque_nm is None for hub in catalogue.hubs)
    assert any(arm.rated_force_n is None for arm in catalogue.torque_arms)
    assert any(freehub.bore_mm is None for freehub in catalogue.freehubs)
    assert any(
        controller.reads and controller.edges_per_pulse is None for controller in catalogue.controllers
    )


def test_parts_that_come_together_are_there() -> None:
    catalogue = demo_catalogue()

    assert any(hub.laced_into for hub in catalogue.hubs)
    assert any(hub.built_in_controller for hub in catalogue.hubs)
    assert any(hub.load_limit == "frame" for hub in catalogue.hubs)
    assert any(pack.built_in_controller for pack in catalogue.packs)
    assert any(controller.reads == () for controller in catalogue.controllers)
    assert any(sensor.sits == "bottom_bracket" for sensor in catalogue.sensors)


def test_parts_stand_in_the_order_of_their_ids() -> None:
    for plural in KINDS:
        ids = [part.id for part in demo_catalogue().parts(plural)]
        assert all(first < second for first, second in pairwise(ids)), plural
