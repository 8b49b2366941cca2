"""When a rule about the clamp of a torque arm does not concern the arm or the stay."""

from __future__ import annotations

from app.catalogue.arm_steps import turns
from app.catalogue.hub_parts import AxleSet, TorqueArm
from app.facts.bike import Bike
from app.mechanics.paper_gauge import arm_mark
from app.rules.check import Inapplicable

NO_CLAMP = Inapplicable("This arm is held by the brake mount and has no clamp.")
NO_BOLT = Inapplicable("This arm is clamped to the stay and needs no mount.")
ANOTHER_SECTION = Inapplicable("This clamp is for another section of stay.")
NO_CLAMP_HERE = Inapplicable("No clamp goes on a stay of this material.")
TURNS = Inapplicable("This arm turns on the axle until its bar points at the stay.")
DOES_NOT_TURN = Inapplicable("This arm doesn't turn to meet the stay; its clamp reaches for it.")
FREE_AXLE = Inapplicable("No flats of this axle decide how the arm stands.")
STANDS_ANYHOW = Inapplicable("This arm goes on the axle at any angle, whatever the flats.")

NEVER_CLAMPED = ("carbon", "magnesium")


def no_clamp(torque_arm: TorqueArm) -> Inapplicable | None:
    """The reason not to ask, or None where the arm is clamped to the stay."""
    return None if torque_arm.anchor == "stay_clamp" else NO_CLAMP


def another_section(bike: Bike, torque_arm: TorqueArm) -> Inapplicable | None:
    """The reason not to ask, or None where the arm has a clamp for the section of the stay."""
    if elsewhere := no_clamp(torque_arm):
        return elsewhere
    return None if bike.stay_section in torque_arm.sections else ANOTHER_SECTION


def never_clamped(bike: Bike, torque_arm: TorqueArm) -> Inapplicable | None:
    """The reason not to ask, or None where the arm has something that it may hold on to."""
    clamped = torque_arm.anchor == "stay_clamp"
    return NO_CLAMP_HERE if clamped and bike.stay_material in NEVER_CLAMPED else None


def not_turning(torque_arm: TorqueArm) -> Inapplicable | None:
    """The reason not to ask, or None where a clamped arm turns on the axle to meet the stay."""
    return no_clamp(torque_arm) or (None if turns(torque_arm) else DOES_NOT_TURN)


def turning(torque_arm: TorqueArm) -> Inapplicable | None:
    """The reason not to ask, or None where the clamp of an arm with steps reaches for the stay."""
    return no_clamp(torque_arm) or (TURNS if turns(torque_arm) else None)


def free_axle(axle_set: AxleSet) -> Inapplicable | None:
    """The reason not to ask, or None where the flats of the axle decide how an arm stands."""
    return None if axle_set.flatted else FREE_AXLE


def clamp_gauge_tells(bike: Bike, torque_arm: TorqueArm) -> bool:
    """Whether the paper gauge of this very arm was held to the stay and told something."""
    marks = bike.gauge_of("gauge_clamp_reaches")
    return bike.gauge_clamp_reaches in ("yes", "touches") and bool(marks) and arm_mark(torque_arm) in marks


def gauge_fits(bike: Bike, torque_arm: TorqueArm) -> bool:
    """Whether one gauge of this arm, held at one angle, both cleared the caliper and reached the stay."""
    both = bike.gauge_of("gauge_arm_clears") == bike.gauge_of("gauge_clamp_reaches")
    said_yes = bike.gauge_arm_clears == "yes" == bike.gauge_clamp_reaches
    return both and said_yes and clamp_gauge_tells(bike, torque_arm)
