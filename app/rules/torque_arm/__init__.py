"""Whether the torque arm finds a place on the left chainstay, and whether it holds the motor there."""

from app.rules.rule import Rule
from app.rules.torque_arm.anchor import mount_free, no_clamp_on_carbon
from app.rules.torque_arm.angles import (
    arm_on_flats,
    clamp_lateral,
    clamp_offset,
    clamp_swivel,
    clamp_swivel_across,
)
from app.rules.torque_arm.beside_caliper import arm_reach_clear_of_caliper
from app.rules.torque_arm.flats import flats_reserve
from app.rules.torque_arm.force import arm_force_holds, arm_force_reserve, arm_without_rating
from app.rules.torque_arm.paper_gauge import gauge_clamp
from app.rules.torque_arm.place import arm_reach, clamp_place
from app.rules.torque_arm.reverse import anchor_both_ways, arm_fault, arm_reverse_holds, arm_reverse_reserve
from app.rules.torque_arm.section import arm_section, clamp_height, clamp_liner, clamp_width

RULES: tuple[Rule, ...] = (
    no_clamp_on_carbon,
    mount_free,
    arm_reach,
    gauge_clamp,
    arm_section,
    clamp_width,
    clamp_height,
    clamp_liner,
    clamp_offset,
    clamp_swivel,
    clamp_swivel_across,
    clamp_lateral,
    arm_on_flats,
    clamp_place,
    arm_reach_clear_of_caliper,
    arm_force_holds,
    arm_force_reserve,
    anchor_both_ways,
    arm_reverse_holds,
    arm_reverse_reserve,
    arm_without_rating,
    arm_fault,
    flats_reserve,
)
