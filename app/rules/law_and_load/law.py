"""Pointers to the law of the region: power, speed and throttle. They caution, and never stop a fit."""

from __future__ import annotations

from app.catalogue.drive_parts import Controller
from app.catalogue.hub_parts import Hub
from app.catalogue.law import Region
from app.catalogue.standards import Standards
from app.facts.bike import Wish
from app.facts.truth import Truth
from app.rules.check import Check, Inapplicable, Limit, Missing, Value
from app.rules.outcome import Weight
from app.rules.rule import Says, Source, rule

REGIONS = Source("The law of the region", "see the table of regions, with the day each was last checked")
NO_NUMBER = Inapplicable("No number is kept for this region: look up the local code.")
ASK = "Ask the rider where the bike is ridden."
WHERE_KEPT = "Where a number is kept for the region."


def told(region: Region) -> dict[str, str]:
    """What every sentence about a region names."""
    return {"region": region.name, "pointer": region.pointer}


@rule(
    title="The motor's rated power is within the region's limit",
    weight=Weight.CAUTIONS,
    applies=WHERE_KEPT,
    expects="The hub's continuous rated power keeps to the limit, below it where the law says under.",
    assumes="The plate on the hub says the same. Rated power says nothing about torque.",
    source=REGIONS,
    settled_by=("region",),
    says=Says(
        passed="Rated power {reading}, limit {high} ({region}). {pointer} "
        "A pointer, not legal advice: check the local code.",
        failed="Rated power {reading}, limit {high} ({region}). {pointer} "
        "A pointer, not legal advice: check the local code.",
        not_known=ASK,
        remedy="Take a hub with a lower rated power, or have the bike registered in the class of its power.",
    ),
)
def law_power(wish: Wish, hub: Hub, standards: Standards) -> Check | Inapplicable | Missing:
    """What is marked counts, not what the motor draws on a hill."""
    region = standards.region(wish.region)
    if region.power_w is None:
        return NO_NUMBER
    if hub.rated_power_w is None:
        return Missing(hub, "rated_power_w")
    limit = Limit(region.power_w, region.provenance_of("power_w"), region.power_excluded, region.source)
    return Check(reading=hub.rated_power_w, unit="W", high=limit, values=told(region))


@rule(
    title="Assistance ends by the region's speed",
    weight=Weight.CAUTIONS,
    applies=WHERE_KEPT,
    expects="The highest limit that can be set in the controller keeps to the region's, "
    "below it where the law says before or under.",
    assumes="The circumference is set to that of the wheel: an error of 1 % there is one of 1 % in speed.",
    source=REGIONS,
    settled_by=("region",),
    says=Says(
        passed="The controller can be set to {set_kmh} at most, limit {as_written} ({region}). {pointer} "
        "A pointer, not legal advice: check the local code.",
        failed="The controller can be set to {set_kmh}, limit {as_written} ({region}). {pointer} "
        "A pointer, not legal advice: check the local code.",
        not_known=ASK,
        remedy="Set the controller's limit below {as_written}, lock it, "
        "and try it on the road before hand-over.",
    ),
)
def law_speed(wish: Wish, controller: Controller, standards: Standards) -> Check | Inapplicable | Missing:
    """A limit that can be set higher can be set wrong."""
    region = standards.region(wish.region)
    if region.speed is None:
        return NO_NUMBER
    if controller.speed_limit_kmh is None:
        return Missing(controller, "speed_limit_kmh")
    limit = Limit(region.speed.kmh, region.provenance_of("speed"), region.speed_excluded, region.source)
    as_written = f"{region.speed.value}\u202f{region.speed.unit}"
    values: dict[str, Value] = {"set_kmh": controller.speed_limit_kmh, "as_written": as_written}
    return Check(
        reading=controller.speed_limit_kmh, unit="km/h", high=limit, values={**told(region), **values}
    )


@rule(
    title="The region lets a throttle drive the bike",
    weight=Weight.CAUTIONS,
    applies="Where the rider wishes a throttle and the controller takes one.",
    expects="A throttle that works without pedalling needs no approval in the region.",
    assumes="The throttle drives the bike from a standstill.",
    source=REGIONS,
    settled_by=("assist", "region"),
    says=Says(
        passed="A throttle that works without pedalling: {region}. {pointer} "
        "A pointer, not legal advice: check the local code.",
        failed="A throttle that works without pedalling is not free there: {region}. {pointer} "
        "A pointer, not legal advice: check the local code.",
        not_known="Ask the rider for the kind of assist, and where the bike is ridden.",
        remedy="Leave the throttle off, limit it to walking pace where that is allowed, "
        "or have the bike approved.",
    ),
)
def law_throttle(wish: Wish, controller: Controller, standards: Standards) -> Check | Inapplicable:
    """Most regions tell a bicycle from a moped by the throttle."""
    if wish.assist != "throttle":
        return Inapplicable("The rider wishes no throttle.")
    if not controller.throttle:
        return Inapplicable("This controller takes no throttle.")
    region = standards.region(wish.region)
    if region.throttle == "unknown":
        return NO_NUMBER
    return Check.of_truth(
        Truth.of(yes=region.throttle == "yes"), region.provenance_of("throttle"), told(region)
    )
