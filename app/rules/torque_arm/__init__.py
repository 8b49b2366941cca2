"""Whether the torque arm finds a place on the left chainstay, and whether it holds the motor there."""

from app.rules.rule import Rule
from app.rules.torque_arm.anchor import mount_free, no_clamp_on_carbon
from app.rules.torque_arm.force import (
    arm_force_holds,
    arm_force_reserve,
    arm_reverse_holds,
    arm_reverse_reserve,
)
from app.rules.torque_arm.place import arm_reach, clamp_lateral, clamp_offset
from app.rules.torque_arm.section import arm_section, clamp_height, clamp_width

RULES: tuple[Rule, ...] = (
    no_clamp_on_carbon,
    mount_free,
    arm_reach,
    arm_section,
    clamp_width,
    clamp_height,
    clamp_offset,
    clamp_lateral,
    arm_force_holds,
    arm_force_reserve,
    arm_reverse_holds,
    arm_reverse_reserve,
)
