"""Where the chainstay can't serve an arm: what else on the bike could hold one, said behind the remedy."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace

from app.catalogue.hub_parts import TorqueArm
from app.catalogue.part import Part
from app.catalogue.standards import Standards
from app.facts.answers import Answers
from app.facts.span import Span
from app.mechanics.anchors import OtherAnchor, other_anchors
from app.report.combination import Combination
from app.report.numbers import span_text
from app.report.report import Finding
from app.rules.brake.caliper_readings import tables_of
from app.rules.torque_arm.load import motor_torque

# The rules that say no where the left chainstay has no place for the clamp.
NO_PLACE = (
    *("no_clamp_on_carbon", "arm_reach", "arm_section", "clamp_width", "clamp_height", "clamp_offset"),
    *("clamp_swivel", "clamp_lateral", "clamp_place", "arm_reach_clear_of_caliper"),
)
MOUNTS = frozenset({"is", "post"})
SAYS = {
    "is_mount": "The IS mount is free: an arm bolted there usually bears {bears}; "
    "this motor turns with {torque}.",
    "post_mount": "The post mount is free: an arm bolted there usually bears {bears}; "
    "this motor turns with {torque}.",
    "seatstay": "The left seatstay has no caliper: an arm clamped there usually bears {bears}; "
    "this motor turns with {torque}.",
}


def _mount(answers: Answers) -> str | None:
    """A mount that is there for certain, and that no caliper uses."""
    mounts = answers.words("caliper_mount")
    free = "disc" not in answers.words("rear_brake") and len(mounts) == 1
    return next(iter(mounts)) if free and mounts <= MOUNTS else None


def _seatstay(answers: Answers, standards: Standards) -> bool:
    """Whether the left seatstay has no caliper, and bears a clamp whatever it may be made of."""
    no_caliper = "disc" not in answers.words("rear_brake") or answers.words("caliper_seat") == {"chainstay"}
    materials = answers.words("stay_material")
    return no_caliper and all(standards.material(word).stay_clamp == "yes" for word in materials)


def _strong_enough(
    answers: Answers, arm: TorqueArm, torque: Span, standards: Standards
) -> Iterator[OtherAnchor]:
    found = other_anchors(
        mount=_mount(answers),
        seatstay_bears_a_clamp=_seatstay(answers, standards),
        arm_reach_mm=arm.reach_from_mm.hull(arm.reach_to_mm),
        tables=tables_of(standards),
        standards=standards,
    )
    return (each for each in found if each.bears_nm.high >= torque.high)


def with_other_anchors(
    answers: Answers, parts: Sequence[Part], findings: Sequence[Finding], standards: Standards
) -> tuple[Finding, ...]:
    """The findings; where the chainstay has no place, the first of them says what else could hold an arm."""
    failed = [each for each in findings if each.rule_id in NO_PLACE and each.state == "no"]
    if not failed:
        return tuple(findings)
    kit = Combination.of(parts)
    torque = motor_torque(kit.winding, kit.controller)
    said = [
        SAYS[each.place].format(bears=span_text(each.bears_nm, "N·m", 0), torque=span_text(torque, "N·m", 0))
        for each in _strong_enough(answers, kit.torque_arm, torque, standards)
    ]
    first = replace(failed[0], remedy=" ".join([failed[0].remedy, *said]))
    return tuple(first if each is failed[0] else each for each in findings)
