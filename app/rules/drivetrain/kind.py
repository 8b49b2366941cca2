"""Whether the kind of drive that the bike has can go on with a motor in the hub."""

from __future__ import annotations

from app.catalogue.hub_parts import Freehub, Hub
from app.catalogue.standards import Standards
from app.facts.bike import Bike
from app.facts.truth import Truth
from app.mechanics.chosen_parts import any_of
from app.rules.check import Check, Inapplicable
from app.rules.drivetrain.applies import label
from app.rules.outcome import Weight
from app.rules.rule import PART_DATA, PRACTICE, Says, rule


@rule(
    title="The bike's drivetrain can stay",
    weight=Weight.BLOCKS,
    applies="Where the freehub is made for the hub.",
    expects="The hub's maker lists the bike's kind of drivetrain. Hub gears and belts never stay: "
    "what drives them sits on the hub that the motor replaces.",
    assumes="No part of the drivetrain but the rear wheel is changed.",
    source=PART_DATA,
    stops_as=5,
    settled_by=("drivetrain",),
    says=Says(
        passed="Drivetrain: {drivetrain}; this hub can be driven that way.",
        failed="Drivetrain: {drivetrain}; this hub can't be driven that way.",
        not_known="Look at the rear wheel: a derailleur, one cog, a hub gear or a belt.",
        remedy="Take a hub for this drivetrain; a hub gear or a belt would have to give way to a derailleur "
        "or a single cog first.",
    ),
)
def drivetrain_kind(bike: Bike, hub: Hub, freehub: Freehub) -> Check | Inapplicable:
    """The maker's own list; it holds no hub gear and no belt."""
    if hub.id not in freehub.hubs:
        return Inapplicable("This freehub is made for another hub.")
    listed = Truth.of(yes=bike.drivetrain in hub.drivetrains)
    return Check.of_truth(listed, values={"drivetrain": label("drivetrain", bike.drivetrain).lower()})


@rule(
    title="The freehub body takes a single cog",
    weight=Weight.CAUTIONS,
    applies="Where the bike has one cog.",
    expects="Single cogs are made for the body: HG splines beside spacers, or a freewheel's thread.",
    assumes="The cog is bought new and lined up with the chainring.",
    source=PRACTICE,
    settled_by=("drivetrain",),
    says=Says(
        passed="Freehub body: {body}. Single cogs are made for it.",
        failed="Freehub body: {body}. No single cogs are made for it.",
        not_known="Look at the rear wheel: a derailleur, one cog, a hub gear or a belt.",
        remedy="Take a freehub with an HG body.",
    ),
)
def single_cog(bike: Bike, freehub: Freehub, standards: Standards) -> Check | Inapplicable:
    """The table of bodies lists a cassette of one cog where the trade makes them."""
    if bike.drivetrain != "single_speed":
        return Inapplicable("The bike has more than a single cog, or none on a freehub.")
    fits = standards.body(freehub.interface).takes
    found = any_of(Truth.of(yes=1 in fit.speeds) for fit in fits)
    return Check.of_truth(found, values={"body": label("cassette_interface", freehub.interface)})
