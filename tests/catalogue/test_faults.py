"""Every fault of a catalogue is named by file, part and field, all at once, and nothing is taken in."""

from __future__ import annotations

import pytest

from app.catalogue.fault import CatalogueFaults, Fault
from app.catalogue.text import load_catalogue
from tests.catalogue.small_catalogue import changed, faults_in, small, texts_of


def test_the_small_catalogue_has_no_fault() -> None:
    assert faults_in(texts_of(small())) == ()


def test_a_value_that_is_missing_is_named() -> None:
    plain = small()
    del plain["packs"][0]["full_v"]

    assert faults_in(texts_of(plain)) == (
        Fault("packs.yaml", "acorn", "full_v", "is missing; it must be given"),
    )


def test_a_part_without_an_id_is_named_by_its_place() -> None:
    plain = small()
    plain["packs"].append({"name": "Nut"})

    assert {fault.part for fault in faults_in(texts_of(plain))} == {"entry 2"}


def test_an_id_belongs_to_one_part_of_a_kind() -> None:
    plain = small()
    plain["packs"] *= 2

    (fault,) = faults_in(texts_of(plain))

    assert fault == Fault("packs.yaml", "acorn", "id", "stands 2 times; an id belongs to one part")


def test_two_kinds_may_use_the_same_id() -> None:
    plain = small()
    plain["packs"][0]["id"] = "oak"

    assert faults_in(texts_of(plain)) == ()


@pytest.mark.parametrize("plural", ["windings", "axle_sets", "freehubs"])
def test_a_hub_that_makes_no_kit_is_a_fault(plural: str) -> None:
    plain = small()
    plain["hubs"].append(plain["hubs"][0] | {"id": "elm"})
    others = {"windings": "hub", "axle_sets": "hubs", "freehubs": "hubs"}
    for other, field in others.items():
        if other != plural:
            plain[other].append(plain[other][0] | {"id": "elm", field: "elm" if field == "hub" else ["elm"]})
    plain["torque_arms"][0]["axle_sets"] = [each["id"] for each in plain["axle_sets"]]

    (fault,) = faults_in(texts_of(plain))

    assert (fault.file, fault.part) == ("hubs.yaml", "elm")
    assert plural.rstrip("s").replace("_", " ") in fault.message


def test_an_axle_set_without_a_torque_arm_is_a_fault() -> None:
    plain = small()
    plain["axle_sets"].append(plain["axle_sets"][0] | {"id": "oak-bare"})

    (fault,) = faults_in(texts_of(plain))

    assert (fault.part, "no torque arm" in fault.message) == ("oak-bare", True)


def test_a_reference_to_a_part_with_a_fault_of_its_own_is_not_a_second_fault() -> None:
    faults = faults_in(changed("hubs", {"spoke_holes": 9}))

    assert [(fault.file, fault.field) for fault in faults] == [("hubs.yaml", "spoke_holes")]


def test_a_file_that_cannot_be_read_is_one_fault_however_often_its_parts_are_named() -> None:
    (fault,) = faults_in(texts_of(small()) | {"hubs.yaml": "- id: [oak"})

    assert fault.file == "hubs.yaml"


def test_all_faults_of_all_files_come_at_once_and_in_order() -> None:
    plain = small()
    plain["hubs"][0] |= {"motor": "steam", "spoke_holes": 9}
    plain["packs"][0]["nominal_v"] = "much"
    texts = texts_of(plain) | {"spacers.yaml": "- [", "wheels.yaml": "[]"}

    faults = faults_in(texts)

    assert [(fault.file, fault.part, fault.field) for fault in faults] == [
        ("hubs.yaml", "oak", "motor"),
        ("hubs.yaml", "oak", "spoke_holes"),
        ("packs.yaml", "acorn", "nominal_v"),
        ("spacers.yaml", "", ""),
        ("wheels.yaml", "", ""),
    ]


def test_the_error_reads_as_one_line_for_each_fault() -> None:
    with pytest.raises(CatalogueFaults) as raised:
        load_catalogue(changed("hubs", {"motor": "steam", "spoke_holes": 9}))

    assert str(raised.value).splitlines() == [
        "hubs.yaml, oak, motor: 'steam' is not known; allowed: 'direct_drive' or 'geared'",
        "hubs.yaml, oak, spoke_holes: must be 12 or more, not 9",
    ]


def test_a_value_in_a_message_is_cut_to_a_line() -> None:
    (fault,) = faults_in(changed("hubs", {"motor": "x" * 5000}))

    assert len(fault.message) < 200


def test_files_that_are_left_out_have_no_parts() -> None:
    assert load_catalogue({}).is_empty


@pytest.mark.parametrize("text", ["about: [a]", "about: ''", "whose: mine", "just words", "- about"])
def test_about_is_one_line(text: str) -> None:
    faults = faults_in(texts_of(small()) | {"about.yaml": text})

    assert {fault.file for fault in faults} == {"about.yaml"}
