"""Whether the clamp finds a place on the left chainstay: along it, above or below it, and sideways."""

from __future__ import annotations

from app.catalogue.hub_parts import TorqueArm
from app.facts.bike import Bike
from app.mechanics.arm_reach import stretch_in_reach
from app.rules.check import Check, Inapplicable, Missing, of_part
from app.rules.outcome import Weight
from app.rules.rule import PART_DATA, Says, rule
from app.rules.torque_arm.applies import no_clamp

APPLIES = "Where the arm is clamped to the left chainstay."


@rule(
    title="The clamp reaches a free stretch of the stay",
    weight=Weight.BLOCKS,
    applies=APPLIES,
    expects="Within the arm's reach the stay is free over the whole length of the clamp.",
    assumes="Between both ends of the free stretch nothing is in the way, all around the stay.",
    source=PART_DATA,
    settled_by=("stay_clear_from_mm", "stay_clear_to_mm"),
    says=Says(
        passed="Stay free within reach: {reading}; the clamp takes {low}. At worst {margin} in hand.",
        failed="Stay free within reach: {reading}; the clamp takes {low}. At best {margin} too short. "
        "This arm reaches from {reach_from_mm} to {reach_to_mm}.",
        not_known="Measure from where to where the left chainstay is free.",
        remedy="Move the hose or the cable if that frees the stay; "
        "otherwise take an arm with another reach or a shorter clamp.",
    ),
)
def arm_reach(bike: Bike, torque_arm: TorqueArm) -> Check | Inapplicable:
    if elsewhere := no_clamp(torque_arm):
        return elsewhere
    reach_from, reach_to = torque_arm.reach_from_mm, torque_arm.reach_to_mm
    stretch = stretch_in_reach(
        clear_from_mm=bike.stay_clear_from_mm,
        clear_to_mm=bike.stay_clear_to_mm,
        reach_from_mm=reach_from,
        reach_to_mm=reach_to,
    )
    return Check(
        reading=stretch,
        unit="mm",
        low=of_part(torque_arm.clamp_length_mm),
        values={"reach_from_mm": reach_from, "reach_to_mm": reach_to},
    )


@rule(
    title="The swivel takes the stay's height beside the axle",
    weight=Weight.BLOCKS,
    applies=APPLIES,
    expects="The stay's centre line passes the axle no further above or below than the arm swivels.",
    assumes="The stay is straight from the axle to the clamp, seen from the side.",
    source=PART_DATA,
    settled_by=("stay_offset_mm",),
    says=Says(
        passed="Stay off the axle by {reading}, plus is above; the arm takes {low} to {high}. "
        "At worst {margin} in hand.",
        failed="Stay off the axle by {reading}, plus is above; the arm takes {low} to {high}. "
        "At best {margin} too low.",
        failed_high="Stay off the axle by {reading}, plus is above; the arm takes {low} to {high}. "
        "At best {margin} too high.",
        not_known="Measure how far the stay's centre line passes above or below the axle.",
        remedy="Take an arm that swivels further.",
    ),
)
def clamp_offset(bike: Bike, torque_arm: TorqueArm) -> Check | Inapplicable | Missing:
    if elsewhere := no_clamp(torque_arm):
        return elsewhere
    low, high = torque_arm.offset_low_mm, torque_arm.offset_high_mm
    if low is None:
        return Missing(torque_arm, "offset_low_mm")
    if high is None:
        return Missing(torque_arm, "offset_high_mm")
    return Check(reading=bike.stay_offset_mm, unit="mm", low=of_part(low), high=of_part(high))


@rule(
    title="The swivel takes the stay's place beside the dropout",
    weight=Weight.BLOCKS,
    applies=APPLIES,
    expects="The stay's centre plane lies as far inboard of the dropout's inner face as the arm swivels.",
    assumes="The stay was measured at the place of the clamp.",
    source=PART_DATA,
    settled_by=("stay_lateral_mm",),
    says=Says(
        passed="Stay {reading} off the dropout's inner face, plus is inboard; the arm takes {low} to {high}. "
        "At worst {margin} in hand.",
        failed="Stay {reading} off the dropout's inner face, plus is inboard; the arm takes {low} to {high}. "
        "At best {margin} too far out.",
        failed_high="Stay {reading} off the dropout's inner face, plus is inboard; "
        "the arm takes {low} to {high}. At best {margin} too far in.",
        not_known="Measure from the dropout's inner face to the stay's centre.",
        remedy="Take an arm that swivels further.",
    ),
)
def clamp_lateral(bike: Bike, torque_arm: TorqueArm) -> Check | Inapplicable | Missing:
    if elsewhere := no_clamp(torque_arm):
        return elsewhere
    low, high = torque_arm.lateral_low_mm, torque_arm.lateral_high_mm
    if low is None:
        return Missing(torque_arm, "lateral_low_mm")
    if high is None:
        return Missing(torque_arm, "lateral_high_mm")
    return Check(reading=bike.stay_lateral_mm, unit="mm", low=of_part(low), high=of_part(high))
