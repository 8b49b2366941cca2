"""Every fault of a catalogue is named by file, part and field, all at once, and nothing is taken in."""

from __future__ import annotations

from typing import Any

import pytest

from app.catalogue.fault import CatalogueFaults, Fault
from app.catalogue.text import load_catalogue
from tests.catalogue.small_catalogue import faults_in, small, texts_of

CHANGES: list[Any] = [
    pytest.param("hubs", {"spoke_holes": "many"}, "spoke_holes", "whole number", id="a count that is a word"),
    pytest.param("hubs", {"spoke_holes": 9}, "spoke_holes", "12 or more, not 9", id="too few holes"),
    pytest.param("hubs", {"spoke_holes": 90}, "spoke_holes", "48 or less, not 90", id="too many holes"),
    pytest.param(
        "hubs", {"motor": "steam"}, "motor", "'steam' is not known; allowed: 'direct_drive'", id="a word"
    ),
    pytest.param("hubs", {"brakes": ["disc", "anchor"]}, "brakes[2]", "'anchor'", id="the second of a list"),
    pytest.param("hubs", {"brakes": "disc"}, "brakes", "must be a list", id="a word where a list belongs"),
    pytest.param(
        "hubs", {"regenerates": "perhaps"}, "regenerates", "true or false", id="neither true nor false"
    ),
    pytest.param("hubs", {"spoke_hole": 36}, "spoke_hole", "did you mean spoke_holes?", id="a name misspelt"),
    pytest.param("hubs", {"colour": "red"}, "colour", "known: id, name", id="a name that nothing is like"),
    pytest.param("hubs", {"name": ""}, "name", "must not be empty", id="no name"),
    pytest.param("hubs", {"name": "x" * 201}, "name", "201 characters; 200 are allowed", id="a long name"),
    pytest.param("hubs", {"name": "a\tb"}, "name", "one line of printable", id="a tab in a name"),
    pytest.param(
        "hubs", {"note": "turn \u202e round"}, "note", "one line of printable", id="text turned round"
    ),
    pytest.param("hubs", {"id": "Weir 2"}, "id", "small letters", id="an id with a space"),
    pytest.param("hubs", {"peak_torque_nm": "strong"}, "peak_torque_nm", "must be a number", id="no number"),
    pytest.param("hubs", {"peak_torque_nm": "NaN"}, "peak_torque_nm", "finite", id="not a number"),
    pytest.param("hubs", {"peak_torque_nm": "inf"}, "peak_torque_nm", "finite", id="infinite"),
    pytest.param(
        "hubs", {"peak_torque_nm": -4}, "peak_torque_nm", "below 0, but is -4", id="a torque below 0"
    ),
    pytest.param(
        "hubs", {"mass_kg": {"low": 5, "high": 4}}, "mass_kg", "low must not be above", id="upside down"
    ),
    pytest.param(
        "hubs", {"mass_kg": {"value": 5}}, "mass_kg", "value with plus_minus", id="half a dimension"
    ),
    pytest.param(
        "hubs", {"rotor_fixing": None}, "rotor_fixing", "how the rotor is fixed", id="disc without fixing"
    ),
    pytest.param("hubs", {"brakes": ["rim"]}, "brakes", "names no disc", id="fixing without disc"),
    pytest.param("hubs", {"rotor_largest_mm": None}, "rotor_largest_mm", "belong together", id="half a pair"),
    pytest.param(
        "hubs", {"bead_seat_smallest_mm": 700}, "bead_seat_smallest_mm", "622", id="a pair upside down"
    ),
    pytest.param(
        "hubs", {"laced_into": "hoop"}, "laced_into", "not in rims.yaml; there: ring", id="no such rim"
    ),
    pytest.param(
        "windings", {"hub": "elm"}, "hub", "not in hubs.yaml; there: oak", id="a winding for no hub"
    ),
    pytest.param("windings", {"turns": 0}, "turns", "1 or more", id="no turns"),
    pytest.param("axle_sets", {"hubs": []}, "hubs", "at least 1", id="an axle set for no hub"),
    pytest.param(
        "axle_sets", {"hubs": ["oak", "elm"]}, "hubs", "'elm'", id="an axle set for one hub too many"
    ),
    pytest.param(
        "axle_sets", {"takes_low_mm": 137}, "takes_low_mm", "below takes_high_mm", id="nothing taken"
    ),
    pytest.param(
        "axle_sets", {"over_locknut_mm": 130}, "over_locknut_mm", "takes_low_mm to", id="not its own width"
    ),
    pytest.param(
        "axle_sets", {"slot_needs_mm": None}, "slot_needs_mm", "how wide a slot", id="slots without width"
    ),
    pytest.param(
        "axle_sets", {"thru_diameter_mm": 12}, "thru_diameter_mm", "end is quick_release", id="two axles"
    ),
    pytest.param(
        "axle_sets", {"end": "thru"}, "thru_diameter_mm", "which it takes", id="a thru-axle of no size"
    ),
    pytest.param(
        "axle_sets", {"end": "thru", "flatted": True}, "flatted", "holds no flats", id="flats in a bore"
    ),
    pytest.param(
        "axle_sets", {"dropout_kinds": ["thru_axle"]}, "dropout_kinds", "quick_release", id="wrong dropout"
    ),
    pytest.param(
        "axle_sets", {"thru_pitches": ["2.0"]}, "thru_pitches[1]", "'1.0', '1.5' or '1.75'", id="pitch"
    ),
    pytest.param("torque_arms", {"axle_sets": ["elm"]}, "axle_sets", "oak-135", id="an arm for no axle set"),
    pytest.param("torque_arms", {"sections": []}, "sections", "stay_clamp", id="a clamp for no section"),
    pytest.param(
        "torque_arms", {"anchor": "mount_bolt"}, "sections", "mount_bolt", id="a bolt with sections"
    ),
    pytest.param(
        "torque_arms", {"offset_low_mm": -3}, "offset_high_mm", "offset_low_mm is given", id="one offset"
    ),
    pytest.param("torque_arms", {"reach_to_mm": 80}, "reach_from_mm", "below reach_to_mm", id="no reach"),
    pytest.param("torque_arms", {"arms": 3}, "arms", "2 or less", id="three arms"),
    pytest.param("freehubs", {"hubs": ["elm"]}, "hubs", "'elm'", id="a freehub for no hub"),
    pytest.param("freehubs", {"interface": "hg_9"}, "interface", "'hg_short_7'", id="no such interface"),
    pytest.param("controllers", {"edges_per_pulse": 3}, "edges_per_pulse", "1, 2 or 4", id="three edges"),
    pytest.param("controllers", {"reads": ["thoughts"]}, "reads[1]", "'one_wire'", id="no such sensor kind"),
    pytest.param("packs", {"nominal_v": 42}, "nominal_v", "below full_v", id="a pack that is never full"),
    pytest.param(
        "packs", {"built_in_controller": "elm"}, "built_in_controller", "leaf", id="no such controller"
    ),
    pytest.param(
        "sensors", {"senses": "torque"}, "freehubs", "senses no torque", id="torque without a freehub"
    ),
    pytest.param("sensors", {"freehubs": ["elm"]}, "freehubs", "oak-hg", id="a sensor on no freehub"),
    pytest.param(
        "sensors", {"sits": "bottom_bracket"}, "freehubs", "bottom bracket", id="a sensor in two places"
    ),
    pytest.param("adapters", {"of": "round_6"}, "of", "six_bolt, center_lock", id="a plug on a rotor"),
    pytest.param("adapters", {"to": "six_bolt"}, "to", "must differ", id="an adapter that changes nothing"),
    pytest.param("spacers", {"interfaces": []}, "interfaces", "at least 1", id="a spacer for no body"),
]


def changed(plural: str, change: dict[str, Any]) -> dict[str, str]:
    plain = small()
    part = plain[plural][0] | change
    plain[plural][0] = {name: value for name, value in part.items() if value is not None}
    return texts_of(plain)


def test_the_small_catalogue_has_no_fault() -> None:
    assert faults_in(texts_of(small())) == ()


@pytest.mark.parametrize(("plural", "change", "field", "words"), CHANGES)
def test_a_fault_is_named_by_file_part_and_field(
    plural: str, change: dict[str, Any], field: str, words: str
) -> None:
    faults = faults_in(changed(plural, change))

    named = str(change.get("id", small()[plural][0]["id"]))
    found = [fault for fault in faults if (fault.part, fault.field) == (named, field)]
    assert [fault.file for fault in found] == [f"{plural}.yaml"]
    assert words in found[0].message


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
