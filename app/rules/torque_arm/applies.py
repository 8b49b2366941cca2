"""When a rule about the clamp of a torque arm does not concern the arm or the stay."""

from __future__ import annotations

from app.catalogue.hub_parts import TorqueArm
from app.facts.bike import Bike
from app.rules.check import Inapplicable

NO_CLAMP = Inapplicable("This arm is held by the brake mount and has no clamp.")
NO_BOLT = Inapplicable("This arm is clamped to the stay and needs no mount.")
ANOTHER_SECTION = Inapplicable("This clamp is for another section of stay.")


def no_clamp(torque_arm: TorqueArm) -> Inapplicable | None:
    """The reason not to ask, or None where the arm is clamped to the stay."""
    return None if torque_arm.anchor == "stay_clamp" else NO_CLAMP


def another_section(bike: Bike, torque_arm: TorqueArm) -> Inapplicable | None:
    """The reason not to ask, or None where the arm has a clamp for the section of the stay."""
    if elsewhere := no_clamp(torque_arm):
        return elsewhere
    return None if bike.stay_section in torque_arm.sections else ANOTHER_SECTION
