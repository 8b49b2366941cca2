"""Whether the clamp reaches the stay with the arm at an angle that clears the brake caliper."""

from __future__ import annotations

from app.catalogue.hub_parts import TorqueArm
from app.catalogue.standards import Standards
from app.facts.bike import Bike
from app.rules.brake.applies import BY_GAUGE, no_bar
from app.rules.brake.caliper_readings import FAR_POINT, MOUNT, NEAR_POINT
from app.rules.check import Check, Inapplicable
from app.rules.outcome import Weight
from app.rules.rule import PART_DATA, Says, rule
from app.rules.torque_arm.applies import gauge_fits
from app.rules.torque_arm.best_place import beside_caliper, without_section
from app.rules.torque_arm.place import in_one_place


@rule(
    title="The clamp reaches the stay where the arm clears the caliper",
    weight=Weight.BLOCKS,
    applies="Where a disc brake stays and the arm has a bar along the left chainstay.",
    expects="At the angle at which the bar points at a free place of the stay, the arm clears the caliper.",
    assumes="The caliper is where mount and readings put it, and as deep everywhere as at its deepest. "
    "A gap that the arm has at no angle, or a stretch that is never free, is judged by its own rule.",
    source=PART_DATA,
    version=2,
    settled_by=(
        *("rear_brake", *MOUNT, *NEAR_POINT, *FAR_POINT),
        *("stay_clear_from_mm", "stay_clear_to_mm", "stay_offset_mm"),
        *("gauge_arm_clears", "gauge_clamp_reaches"),
    ),
    says=Says(
        passed="Clamped {place_mm} from the axle, the bar {bar_deg} above the stay, "
        "{tightest} is tightest and has {reading} to spare. "
        "At worst {margin} in hand.",
        failed="The best place is {place_mm} from the axle, the bar {bar_deg} above the stay; "
        "there {tightest} shuts out the other limits. "
        "At best {margin} short.",
        not_known="Measure the caliper's nearest point and far end, the line of its bolts, "
        "how far the stay passes above the axle, and where it is free.",
        remedy="Take an arm with a crank in its bar or with more angles, or free another part of the stay.",
    ),
)
def arm_reach_clear_of_caliper(
    bike: Bike, torque_arm: TorqueArm, standards: Standards
) -> Check | Inapplicable:
    """An arm that clears the caliper at one angle and reaches the stay at another doesn't fit."""
    if gauge_fits(bike, torque_arm):
        return BY_GAUGE
    return no_bar(bike, torque_arm) or in_one_place(
        beside_caliper(without_section(bike, torque_arm), bike, torque_arm, standards)
    )
