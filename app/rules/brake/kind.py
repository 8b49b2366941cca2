"""Whether the rear brake that the bike has can stay when a motor hub takes the place of its own."""

from __future__ import annotations

from app.catalogue.hub_parts import Hub
from app.facts.bike import Bike
from app.facts.truth import Truth
from app.rules.check import Check, Inapplicable
from app.rules.outcome import Weight
from app.rules.rule import PART_DATA, Says, rule

NO_BRAKE = Inapplicable("This bike has no rear brake that could stay.")


@rule(
    title="The rear brake can stay",
    weight=Weight.BLOCKS,
    applies="Where the bike has a brake at the rear.",
    expects="The hub is made for the kind of brake that the bike has.",
    assumes="The brake works. The motor's own braking is not counted as a brake.",
    source=PART_DATA,
    stops_as=5,
    settled_by=("rear_brake",),
    says=Says(
        passed="The rear brake stays: this hub is made for it.",
        failed="The rear brake can't stay: this hub is not made for it.",
        not_known="Look what kind of brake is at the rear.",
        remedy="Take a hub for this brake. A coaster or drum brake goes away with its hub: "
        "such a bike first needs another rear brake, on mounts that its frame has.",
    ),
)
def brake_kind(bike: Bike, hub: Hub) -> Check | Inapplicable:
    """A coaster or drum brake is in the hub that the motor replaces."""
    if bike.rear_brake == "none":
        return NO_BRAKE
    return Check.of_truth(Truth.of(yes=bike.rear_brake in hub.brakes))
