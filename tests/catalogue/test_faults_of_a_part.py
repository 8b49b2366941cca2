"""A value that a part can't have is a fault, named by file, part and field, with what is allowed there."""

from __future__ import annotations

from typing import Any

import pytest

from tests.catalogue.small_catalogue import changed, faults_in, small

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
    pytest.param("hubs", {"peak_torque_nm": "1e-999999999"}, "peak_torque_nm", "9 decimal", id="very small"),
    pytest.param("hubs", {"peak_torque_nm": "1e999999999"}, "peak_torque_nm", "finite", id="very large"),
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
    pytest.param("torque_arms", {"reach_from_mm": 0}, "reach_from_mm", "lever", id="an arm without a lever"),
    pytest.param("torque_arms", {"sections": []}, "sections", "stay_clamp", id="a clamp for no section"),
    pytest.param(
        "torque_arms", {"anchor": "mount_bolt"}, "sections", "mount_bolt", id="a bolt with sections"
    ),
    pytest.param(
        "torque_arms", {"offset_low_mm": -3}, "offset_high_mm", "offset_low_mm is given", id="one offset"
    ),
    pytest.param("torque_arms", {"reach_to_mm": 80}, "reach_from_mm", "below reach_to_mm", id="no reach"),
    pytest.param("torque_arms", {"arms": 3}, "arms", "2 or less", id="three arms"),
    pytest.param(
        "torque_arms", {"clamp_length_mm": 71}, "clamp_length_mm", "shorter than the reach", id="a long clamp"
    ),
    pytest.param(
        "torque_arms",
        {"clamp_places_mm": [100, 141]},
        "clamp_places_mm",
        "whole clamp",
        id="a hole too far out",
    ),
    pytest.param(
        "torque_arms",
        {"index_angles_deg": [0, 20], "offset_low_mm": -5, "offset_high_mm": 5},
        "index_angles_deg",
        "leave a gap",
        id="steps too far apart",
    ),
    pytest.param(
        "torque_arms", {"level_from_deg": -10}, "level_to_deg", "level_from_deg is given", id="half a level"
    ),
    pytest.param(
        "torque_arms", {"swivel_in_plane_deg": 90}, "swivel_in_plane_deg", "below 90", id="a clamp askew"
    ),
    pytest.param(
        "torque_arms",
        {"holds_braking": False, "rated_reverse_force_n": 900},
        "rated_reverse_force_n",
        "holds_braking",
        id="a strap rated against braking",
    ),
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


@pytest.mark.parametrize(("plural", "change", "field", "words"), CHANGES)
def test_a_fault_is_named_by_file_part_and_field(
    plural: str, change: dict[str, Any], field: str, words: str
) -> None:
    faults = faults_in(changed(plural, change))

    named = str(change.get("id", small()[plural][0]["id"]))
    found = [fault for fault in faults if (fault.part, fault.field) == (named, field)]
    assert [fault.file for fault in found] == [f"{plural}.yaml"]
    assert words in found[0].message
