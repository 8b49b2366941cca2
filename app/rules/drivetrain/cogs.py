"""Whether the smallest and the largest cog find room on the freehub and beside the motor."""

from __future__ import annotations

from app.catalogue.hub_parts import Freehub, Hub
from app.facts.bike import Bike
from app.facts.span import Span
from app.rules.check import Check, Inapplicable, Missing, of_part
from app.rules.drivetrain.applies import no_cassette
from app.rules.outcome import Weight
from app.rules.rule import PART_DATA, Says, rule


@rule(
    title="The smallest cog goes onto the freehub body",
    weight=Weight.BLOCKS,
    applies="Where the bike has a cassette and a derailleur.",
    expects="The smallest cog has at least as many teeth as the freehub allows.",
    assumes="The bike keeps its cassette.",
    source=PART_DATA,
    settled_by=("drivetrain", "smallest_cog"),
    says=Says(
        passed="The smallest cog has {reading} teeth; this body takes {low} or more.",
        failed="The smallest cog has {reading} teeth; this body takes {low} or more.",
        not_known="Count the teeth of the smallest cog.",
        remedy="Take a freehub for smaller cogs, or a cassette whose smallest cog has {low} teeth.",
    ),
)
def smallest_cog(bike: Bike, freehub: Freehub) -> Check | Inapplicable:
    """A body is too thick for cogs below a number of teeth."""
    if reason := no_cassette(bike):
        return reason
    return Check(reading=bike.smallest_cog, low=of_part(Span.exactly(freehub.smallest_cog)))


@rule(
    title="The largest cog clears the motor's cover",
    weight=Weight.BLOCKS,
    applies="Where the bike has a cassette and a derailleur.",
    expects="The largest cog has at most as many teeth as the hub's maker says clear the drive-side cover.",
    assumes="The spacers behind the cassette are those of its interface.",
    source=PART_DATA,
    settled_by=("drivetrain", "largest_cog"),
    says=Says(
        passed="The largest cog has {reading} teeth; {high} clear the cover of this motor.",
        failed="The largest cog has {reading} teeth; {high} clear the cover of this motor.",
        not_known="Count the teeth of the largest cog from a chalk mark.",
        remedy="Take a hub with room for a larger cog, or a cassette whose largest cog has {high} teeth.",
    ),
)
def largest_cog(bike: Bike, hub: Hub) -> Check | Inapplicable | Missing:
    """The cover of a wide motor reaches the first cogs."""
    if reason := no_cassette(bike):
        return reason
    if hub.largest_cog is None:
        return Missing(hub, "largest_cog")
    return Check(reading=bike.largest_cog, high=of_part(Span.exactly(hub.largest_cog)))
