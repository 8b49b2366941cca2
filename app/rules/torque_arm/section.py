"""Whether the clamp closes around the left chainstay: its section, its width and its height."""

from __future__ import annotations

from app.catalogue.hub_parts import TorqueArm
from app.catalogue.provenance import Provenance
from app.facts.bike import Bike
from app.facts.truth import Truth
from app.rules.axle.torque import named
from app.rules.check import Check, Inapplicable, Missing, of_part
from app.rules.outcome import Weight
from app.rules.rule import PART_DATA, PRACTICE, Says, rule
from app.rules.torque_arm.applies import another_section, never_clamped, no_clamp

APPLIES = "Where the arm has a clamp for the section of the stay."
ANOTHER_CLAMP = "Take an arm whose clamp is made for this stay, or the other size of clamp."


@rule(
    title="The clamp is made for the section of the stay",
    weight=Weight.BLOCKS,
    applies="Where the arm is clamped to the left chainstay.",
    expects="The section of the stay is one of those that the clamp closes on.",
    assumes="The section was felt at the place of the clamp.",
    source=PART_DATA,
    settled_by=("stay_section",),
    says=Says(
        passed="The clamp closes on this section of stay.",
        failed="The clamp doesn't close on this section of stay.",
        not_known="Feel the section of the left chainstay where the clamp would sit.",
        remedy=ANOTHER_CLAMP,
    ),
)
def arm_section(bike: Bike, torque_arm: TorqueArm) -> Check | Inapplicable:
    if elsewhere := no_clamp(torque_arm):
        return elsewhere
    return Check.of_truth(Truth.of(yes=bike.stay_section in torque_arm.sections))


@rule(
    title="The clamp takes the width of the stay",
    weight=Weight.BLOCKS,
    applies=APPLIES,
    expects="The stay is as wide as the clamp takes.",
    assumes="The width was measured at the place of the clamp, hose and liner left out.",
    source=PART_DATA,
    settled_by=("stay_section", "stay_width_mm"),
    says=Says(
        passed="Stay {reading} wide; the clamp takes {low} to {high}. At worst {margin} in hand.",
        failed="Stay {reading} wide; the clamp takes {low} to {high}. At best {margin} too narrow.",
        failed_high="Stay {reading} wide; the clamp takes {low} to {high}. At best {margin} too wide.",
        not_known="Measure the width of the left chainstay at the place of the clamp.",
        remedy=ANOTHER_CLAMP,
    ),
)
def clamp_width(bike: Bike, torque_arm: TorqueArm) -> Check | Inapplicable | Missing:
    if elsewhere := another_section(bike, torque_arm):
        return elsewhere
    low, high = torque_arm.clamp_width_low_mm, torque_arm.clamp_width_high_mm
    if low is None:
        return Missing(torque_arm, "clamp_width_low_mm")
    if high is None:
        return Missing(torque_arm, "clamp_width_high_mm")
    return Check(reading=bike.stay_width_mm, unit="mm", low=of_part(low), high=of_part(high))


@rule(
    title="The clamp takes the height of the stay",
    weight=Weight.BLOCKS,
    applies=APPLIES,
    expects="The stay is as high as the clamp takes.",
    assumes="The height was measured at the place of the clamp; a round stay is as high as it is wide.",
    source=PART_DATA,
    settled_by=("stay_section", "stay_width_mm", "stay_height_mm"),
    says=Says(
        passed="Stay {reading} high; the clamp takes {low} to {high}. At worst {margin} in hand.",
        failed="Stay {reading} high; the clamp takes {low} to {high}. At best {margin} too low.",
        failed_high="Stay {reading} high; the clamp takes {low} to {high}. At best {margin} too high.",
        not_known="Measure the height of the left chainstay at the place of the clamp.",
        remedy=ANOTHER_CLAMP,
    ),
)
def clamp_height(bike: Bike, torque_arm: TorqueArm) -> Check | Inapplicable | Missing:
    if elsewhere := another_section(bike, torque_arm):
        return elsewhere
    low, high = torque_arm.clamp_height_low_mm, torque_arm.clamp_height_high_mm
    if low is None:
        return Missing(torque_arm, "clamp_height_low_mm")
    if high is None:
        return Missing(torque_arm, "clamp_height_high_mm")
    reading = bike.stay_width_mm if bike.stay_section == "round" else bike.stay_height_mm
    return Check(reading=reading, unit="mm", low=of_part(low), high=of_part(high))


@rule(
    title="A liner spares the wall of the stay",
    weight=Weight.CAUTIONS,
    applies="Where the arm is clamped to a stay that bears a clamp.",
    expects="The clamp comes with a liner of rubber.",
    assumes="Nobody can measure the wall of a stay; a bare clamp crushes aluminium below 1.5 mm "
    "and steel below 0.7 mm.",
    source=PRACTICE,
    settled_by=("stay_material",),
    says=Says(
        passed="The clamp comes with a liner, which spares the wall of a stay of {stay_material}.",
        failed="The clamp goes bare on a stay of {stay_material}, whose wall may be too thin for that.",
        not_known="Find out what the left chainstay is made of; a magnet tells steel.",
        remedy="Put 1 to 2 mm of rubber or shrink tube under the clamp, and keep to its lower torque.",
    ),
)
def clamp_liner(bike: Bike, torque_arm: TorqueArm) -> Check | Inapplicable:
    if elsewhere := no_clamp(torque_arm) or never_clamped(bike, torque_arm):
        return elsewhere
    lined = Truth.of(yes=torque_arm.liner_mm is not None)
    return Check.of_truth(lined, Provenance.PRACTICE, {"stay_material": named(bike.stay_material)})
