"""A catalogue of one small part of each kind, as the plain values that stand in its YAML."""

from __future__ import annotations

from copy import deepcopy
from typing import Any, TypeAlias

from app.catalogue.fault import CatalogueFaults, Fault
from app.catalogue.text import load_catalogue
from app.catalogue.yaml_text import write_yaml

Plain: TypeAlias = dict[str, list[dict[str, Any]]]

SMALL: Plain = {
    "hubs": [
        {
            "id": "oak",
            "name": "Oak",
            "motor": "direct_drive",
            "spoke_holes": 36,
            "brakes": ["disc", "rim"],
            "drivetrains": ["derailleur"],
            "rotor_fixing": "six_bolt",
            "rotor_smallest_mm": 160,
            "rotor_largest_mm": 203,
            "bead_seat_smallest_mm": 507,
            "bead_seat_largest_mm": 622,
        }
    ],
    "windings": [
        {"id": "oak-6t", "name": "Oak 6", "hub": "oak", "kv_rpm_per_v": 9.1, "resistance_ohm": 0.13}
    ],
    "axle_sets": [
        {
            "id": "oak-135",
            "name": "Oak 135",
            "hubs": ["oak"],
            "end": "quick_release",
            "dropout_kinds": ["slotted_vertical"],
            "takes_low_mm": 134,
            "takes_high_mm": 137,
            "over_locknut_mm": 135,
            "slot_needs_mm": 9.9,
        }
    ],
    "torque_arms": [
        {
            "id": "branch",
            "name": "Branch",
            "axle_sets": ["oak-135"],
            "anchor": "stay_clamp",
            "disc_radius_mm": 21,
            "bar_half_width_mm": 8,
            "outer_face_mm": -1,
            "inner_face_mm": 5,
            "reach_from_mm": 80,
            "reach_to_mm": 150,
            "clamp_length_mm": 20,
            "sections": ["round"],
        }
    ],
    "freehubs": [{"id": "oak-hg", "name": "Oak HG", "hubs": ["oak"], "interface": "hg", "smallest_cog": 11}],
    "controllers": [
        {
            "id": "leaf",
            "name": "Leaf",
            "full_voltage_limit_v": 60,
            "battery_current_limit_a": 20,
            "phase_current_limit_a": 50,
            "reads": ["one_wire"],
        }
    ],
    "packs": [
        {"id": "acorn", "name": "Acorn", "nominal_v": 36, "full_v": 42, "capacity_ah": 10, "continuous_a": 20}
    ],
    "sensors": [{"id": "twig", "name": "Twig", "senses": "one_wire", "freehubs": ["oak-hg"]}],
    "rims": [{"id": "ring", "name": "Ring", "bead_seat_mm": 622, "holes": 36, "inner_width_mm": 21}],
    "adapters": [{"id": "knot", "name": "Knot", "joins": "rotor", "of": "six_bolt", "to": "center_lock"}],
    "spacers": [{"id": "shim", "name": "Shim", "thickness_mm": 1, "interfaces": ["hg"]}],
}


def small() -> Plain:
    """A copy of the small catalogue that may be changed."""
    return deepcopy(SMALL)


def texts_of(plain: Plain) -> dict[str, str]:
    """The files of such a catalogue."""
    return {f"{plural}.yaml": write_yaml(parts) for plural, parts in plain.items()}


def faults_in(texts: dict[str, str]) -> tuple[Fault, ...]:
    """What keeps these texts from being taken in; none if they are."""
    try:
        load_catalogue(texts)
    except CatalogueFaults as faults:
        return faults.faults
    return ()


def changed(plural: str, change: dict[str, Any]) -> dict[str, str]:
    """The files of the small catalogue with its first part of a kind changed; None takes a value away."""
    plain = small()
    part = plain[plural][0] | change
    plain[plural][0] = {name: value for name, value in part.items() if value is not None}
    return texts_of(plain)
