"""The place where an arm is best clamped on one bike: for the sheet, the drawings and the remedies."""

from __future__ import annotations

from app.catalogue.hub_parts import TorqueArm
from app.catalogue.standards import Standards
from app.facts.bike import Bike
from app.facts.span import Span
from app.mechanics.arm_outline import index_angles, measures_of
from app.mechanics.arm_place import Margins, Stay, margins_of
from app.mechanics.clamp import clamp_of
from app.mechanics.place_beside_caliper import with_caliper
from app.mechanics.placement import Placement, placement_of, stay_of
from app.mechanics.stays import toe_in_deg
from app.rules.brake.caliper_readings import tables_of, whole_readings

NOTHING = Span(0, 0)


def beside_caliper(margins: Margins, bike: Bike, torque_arm: TorqueArm, standards: Standards) -> Margins:
    """The margins of a clamp, with the gap to the caliper that its maker wants."""
    return with_caliper(
        margins,
        arm=measures_of(torque_arm),
        angles=index_angles(torque_arm),
        readings=whole_readings(bike),
        tables=tables_of(standards),
        wanted_mm=torque_arm.clearance_mm or NOTHING,
    )


def without_section(bike: Bike, torque_arm: TorqueArm) -> Margins:
    """The margins of free stretch and height beside the axle alone."""
    clamp = clamp_of(torque_arm)._replace(lateral_mm=None, width_mm=None, height_mm=None)
    stay = Stay(bike.stay_offset_mm, NOTHING, bike.stay_clear_from_mm, bike.stay_clear_to_mm, *[NOTHING] * 5)
    return margins_of(clamp, stay)


def best_place(bike: Bike, torque_arm: TorqueArm, standards: Standards) -> Placement | None:
    """The place that suits all limits best, the caliper's with them; None for an arm without a clamp.

    bike   shows every fact of stay and brake, each choice with one word
    """
    if torque_arm.anchor != "stay_clamp":
        return None
    clamp, stay = clamp_of(torque_arm), stay_of(bike, standards)
    margins = margins_of(clamp, stay)
    if bike.rear_brake == "disc":
        margins = beside_caliper(margins, bike, torque_arm, standards)
    toe_in = toe_in_deg(
        draws_in_mm=standards.limit("stay_draws_in_mm").value, length_mm=bike.chainstay_length_mm
    )
    return placement_of(clamp, stay, margins, section=bike.stay_section, toe_in=toe_in)
