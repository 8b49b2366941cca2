"""Whether the clamp finds a place along the left chainstay, and whether all its limits meet in one place."""

from __future__ import annotations

from app.catalogue.hub_parts import TorqueArm
from app.catalogue.standards import Standards
from app.facts.bike import Bike
from app.facts.span import Span
from app.mechanics.arm_place import Margins, margins_of, span_at
from app.mechanics.arm_reach import free_within_reach
from app.mechanics.clamp import clamp_of
from app.mechanics.placement import stay_of
from app.rules.brake.applies import BY_GAUGE
from app.rules.check import Check, Inapplicable, Value, of_part
from app.rules.outcome import Weight
from app.rules.rule import PART_DATA, Says, rule
from app.rules.torque_arm.applies import another_section, clamp_gauge_tells, no_clamp

APPLIES = "Where the arm is clamped to the left chainstay."

# How sentences name the limit that has least in hand.
LIMITS = {
    "free_stretch": "the free stretch",
    "swivel": "the swivel",
    "offset": "the height of the stay",
    "lateral": "the side of the stay",
    "width": "the width of the clamp",
    "height": "the height of the clamp",
    "caliper": "the caliper",
}
NOTHING_IN_HAND = of_part(Span(0, 0))


def in_one_place(margins: Margins) -> Check:
    """What the tightest limit has in hand in the best place, with that place and that limit."""
    at, chosen = margins.choice(), margins.sure
    values: dict[str, Value] = {
        "place_mm": span_at(chosen.along_mm, at),
        "bar_deg": span_at(chosen.bearing_deg, at),
        "tightest": LIMITS[margins.tightest()],
    }
    return Check(reading=margins.together(), unit="mm", low=NOTHING_IN_HAND, values=values)


@rule(
    title="The clamp reaches a free stretch of the stay",
    weight=Weight.BLOCKS,
    applies=APPLIES,
    expects="Within the arm's reach the stay is free over the whole length of the clamp.",
    assumes="Between both ends of the free stretch nothing is in the way, all around the stay.",
    source=PART_DATA,
    version=3,
    settled_by=("stay_clear_from_mm", "stay_clear_to_mm", "stay_offset_mm", "gauge_clamp_reaches"),
    says=Says(
        passed="Stay free within reach: {reading}; the clamp takes {low}. At worst {margin} in hand.",
        failed="Stay free within reach: {reading}; the clamp takes {low}. At best {margin} too short. "
        "This arm reaches from {reach_from_mm} to {reach_to_mm}.",
        not_known="Measure from where to where the left chainstay is free.",
        remedy="Move the hose or the cable if that frees the stay; "
        "otherwise take an arm with another reach or a shorter clamp, or one that bolts to an unused mount.",
    ),
)
def arm_reach(bike: Bike, torque_arm: TorqueArm) -> Check | Inapplicable:
    if elsewhere := no_clamp(torque_arm):
        return elsewhere
    if clamp_gauge_tells(bike, torque_arm):
        return BY_GAUGE
    free = free_within_reach(
        clamp_of(torque_arm),
        clear_from_mm=bike.stay_clear_from_mm,
        clear_to_mm=bike.stay_clear_to_mm,
        offset_mm=bike.stay_offset_mm,
    )
    values: dict[str, Value] = {
        "reach_from_mm": torque_arm.reach_from_mm,
        "reach_to_mm": torque_arm.reach_to_mm,
    }
    return Check(reading=free, unit="mm", low=of_part(torque_arm.clamp_length_mm), values=values)


@rule(
    title="All limits of the clamp are met in one place",
    weight=Weight.BLOCKS,
    applies="Where the arm has a clamp for the section of the stay.",
    expects="One place within reach is free, within the clamp's reach and swivel, and of a size to clamp.",
    assumes="From where it was measured the stay runs straight, inward and thicker as stays do. "
    "A limit that no place meets by itself is judged by its own rule.",
    source=PART_DATA,
    settled_by=(
        *("stay_section", "stay_clear_from_mm", "stay_clear_to_mm", "stay_offset_mm"),
        *("stay_lateral_mm", "chainstay_length_mm", "stay_width_mm", "stay_height_mm"),
    ),
    says=Says(
        passed="Clamped {place_mm} from the axle, the bar {bar_deg} above the stay, "
        "{tightest} is tightest and has {reading} to spare. "
        "At worst {margin} in hand.",
        failed="The best place is {place_mm} from the axle, the bar {bar_deg} above the stay; "
        "there {tightest} shuts out the other limits. "
        "At best {margin} short.",
        not_known="Measure where the left chainstay is free, and its size and place where the clamp goes.",
        remedy="Take an arm whose clamp swivels further or sits elsewhere along the bar.",
    ),
)
def clamp_place(bike: Bike, torque_arm: TorqueArm, standards: Standards) -> Check | Inapplicable:
    """Each limit alone may be met somewhere; the clamp is in one place."""
    if elsewhere := another_section(bike, torque_arm):
        return elsewhere
    return in_one_place(margins_of(clamp_of(torque_arm), stay_of(bike, standards)))
