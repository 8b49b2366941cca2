"""When a rule about the disc brake does not concern the bike or the parts."""

from __future__ import annotations

from app.catalogue.hub_parts import Hub, TorqueArm
from app.facts.bike import Bike
from app.rules.check import Inapplicable

NO_DISC = Inapplicable("This bike has no disc brake.")
NO_ROTOR = Inapplicable("This hub carries no rotor.")
NO_BAR = Inapplicable("This arm has no bar along the stay: the brake mount holds it.")


def no_disc(bike: Bike) -> Inapplicable | None:
    """The reason not to ask, or None where the rear brake is a disc brake."""
    return None if bike.rear_brake == "disc" else NO_DISC


def no_rotor(bike: Bike, hub: Hub) -> Inapplicable | None:
    """The reason not to ask, or None where the rear brake is a disc brake and the hub carries a rotor."""
    return NO_ROTOR if hub.rotor_fixing is None else no_disc(bike)


def no_bar(bike: Bike, torque_arm: TorqueArm) -> Inapplicable | None:
    """The reason not to ask, or None where a caliper may stand in the way of the arm's bar."""
    return NO_BAR if torque_arm.anchor == "mount_bolt" else no_disc(bike)
