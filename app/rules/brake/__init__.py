"""Whether the rear brake can stay, and whether arm and motor leave its caliper alone."""

from app.rules.brake.arm_clearance import (
    arm_caliper,
    arm_caliper_far,
    arm_caliper_running,
    arm_caliper_wanted,
)
from app.rules.brake.caliper_place import caliper_as_mounted
from app.rules.brake.flat_mount import flat_mount_free_stay
from app.rules.brake.kind import brake_kind
from app.rules.brake.paper_gauge import gauge_arm, gauge_shell
from app.rules.brake.rotor_fixing import rotor_adapter, rotor_fixing
from app.rules.brake.rotor_plane import rotor_plane, rotor_plane_shims
from app.rules.brake.rotor_size import frame_rotor_limit, rotor_size
from app.rules.brake.rotor_stay import rotor_beside_stay
from app.rules.brake.rotor_wear import rotor_wear
from app.rules.brake.shell_clearance import shell_caliper, shell_caliper_running, shell_caliper_wanted
from app.rules.brake.spokes import caliper_spokes
from app.rules.rule import Rule

RULES: tuple[Rule, ...] = (
    brake_kind,
    rotor_fixing,
    rotor_adapter,
    rotor_size,
    frame_rotor_limit,
    rotor_wear,
    rotor_plane,
    rotor_plane_shims,
    rotor_beside_stay,
    caliper_as_mounted,
    arm_caliper,
    arm_caliper_far,
    arm_caliper_wanted,
    arm_caliper_running,
    shell_caliper,
    shell_caliper_wanted,
    shell_caliper_running,
    gauge_arm,
    gauge_shell,
    caliper_spokes,
    flat_mount_free_stay,
)
