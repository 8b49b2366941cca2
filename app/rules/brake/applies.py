"""When a rule about the disc brake does not concern the bike or the parts."""

from __future__ import annotations

from app.catalogue.hub_parts import AxleSet, Hub, TorqueArm
from app.facts.bike import Bike
from app.mechanics.paper_gauge import arm_mark, shell_mark
from app.rules.check import Inapplicable

NO_DISC = Inapplicable("This bike has no disc brake.")
NO_ROTOR = Inapplicable("This hub carries no rotor.")
NO_BAR = Inapplicable("This arm has no bar along the stay: the brake mount holds it.")

BY_GAUGE = Inapplicable("The paper gauge that was held on the bike has told this.")

# The words of a gauge that settle something.
TELLING = ("yes", "touches")


def no_disc(bike: Bike) -> Inapplicable | None:
    """The reason not to ask, or None where the rear brake is a disc brake."""
    return None if bike.rear_brake == "disc" else NO_DISC


def no_rotor(bike: Bike, hub: Hub) -> Inapplicable | None:
    """The reason not to ask, or None where the rear brake is a disc brake and the hub carries a rotor."""
    return NO_ROTOR if hub.rotor_fixing is None else no_disc(bike)


def no_bar(bike: Bike, torque_arm: TorqueArm) -> Inapplicable | None:
    """The reason not to ask, or None where a caliper may stand in the way of the arm's bar."""
    return NO_BAR if torque_arm.anchor == "mount_bolt" else no_disc(bike)


def arm_gauge_tells(bike: Bike, torque_arm: TorqueArm) -> bool:
    """Whether the paper gauge of this very arm was held beside the caliper and told something."""
    marks = bike.gauge_of("gauge_arm_clears")
    return bike.gauge_arm_clears in TELLING and bool(marks) and arm_mark(torque_arm) in marks


def shell_gauge_tells(bike: Bike, hub: Hub, axle_set: AxleSet) -> bool:
    """Whether the paper gauge of this very shell on this axle set was held there and told something."""
    marks = bike.gauge_of("gauge_shell_clears")
    return bike.gauge_shell_clears in TELLING and bool(marks) and shell_mark(hub, axle_set) in marks


def measured_arm(bike: Bike, torque_arm: TorqueArm) -> Inapplicable | None:
    """The reason not to measure, or None where the arm's bar has to clear a caliper and no gauge told."""
    if elsewhere := no_bar(bike, torque_arm):
        return elsewhere
    return BY_GAUGE if arm_gauge_tells(bike, torque_arm) else None
