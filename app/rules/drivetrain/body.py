"""Whether the bike's cassette goes onto the freehub body, and what goes behind it."""

from __future__ import annotations

from app.catalogue.catalogue import Catalogue
from app.catalogue.drivetrain_standards import NO_SPACER, FreehubBody
from app.catalogue.hub_parts import Freehub
from app.catalogue.standards import Standards
from app.facts.bike import Bike
from app.facts.span import Span
from app.facts.truth import Truth
from app.mechanics.cassette import spacers_behind
from app.mechanics.counts import for_every_count, whole_numbers
from app.rules.check import Check, Inapplicable
from app.rules.drivetrain.applies import label, no_cassette
from app.rules.outcome import Weight
from app.rules.rule import Says, Source, rule

BODIES = Source("Freehub and cassette compatibility", "rolwheels.com/pages/freehub-cassette-compability")
OFF_THE_BODY = Inapplicable("The cassette doesn't go onto this freehub body at all.")


@rule(
    title="The cassette goes onto the freehub body",
    weight=Weight.BLOCKS,
    applies="Where the bike has a cassette and a derailleur.",
    expects="Cassettes of the bike's interface go onto the body, by the table of freehub bodies.",
    assumes="The bike keeps its cassette.",
    source=BODIES,
    settled_by=("drivetrain", "cassette_interface"),
    says=Says(
        passed="Cassette: {cassette}. Freehub body: {body}. They go together.",
        failed="Cassette: {cassette}. Freehub body: {body}. They don't go together.",
        not_known="Read the back of the cassette, or look at its splines.",
        remedy="Take the freehub for this cassette, or a cassette for this body that the shifter can index.",
    ),
)
def cassette_interface(bike: Bike, freehub: Freehub, standards: Standards) -> Check | Inapplicable:
    """The table's word; what it doesn't list doesn't fit."""
    if reason := no_cassette(bike):
        return reason
    body = standards.body(freehub.interface)
    return Check.of_truth(
        Truth.of(yes=body.takes_interface(bike.cassette_interface)),
        body.provenance,
        {
            "cassette": label("cassette_interface", bike.cassette_interface),
            "body": label("cassette_interface", freehub.interface),
        },
    )


@rule(
    title="The freehub body takes as many cogs as the cassette has",
    weight=Weight.BLOCKS,
    applies="Where the bike has a cassette of an interface that goes onto the body.",
    expects="The table of freehub bodies lists the number of cogs for this interface.",
    assumes="The bike keeps its cassette.",
    source=BODIES,
    settled_by=("drivetrain", "cassette_interface", "cassette_speeds"),
    says=Says(
        passed="The cassette has {cogs} cogs; this body takes {listed}.",
        failed="The cassette has {cogs} cogs; this body takes {listed}.",
        not_known="Count the cogs on the rear wheel.",
        remedy="Take a freehub for this cassette, or a cassette with as many cogs as the body takes; "
        "the shifter's index must suit it.",
    ),
)
def cassette_speeds(bike: Bike, freehub: Freehub, standards: Standards) -> Check | Inapplicable:
    """Every count that the cassette may have is looked up."""
    if reason := no_cassette(bike):
        return reason
    body = standards.body(freehub.interface)
    if not body.takes_interface(bike.cassette_interface):
        return OFF_THE_BODY
    fits = [fit for fit in body.takes if fit.cassette == bike.cassette_interface]
    listed = sorted({count for fit in fits for count in fit.speeds if count > 1})
    return Check.of_truth(
        for_every_count(bike.cassette_speeds, lambda count: Truth.of(yes=count in listed)),
        body.provenance,
        {"cogs": bike.cassette_speeds, "listed": ", ".join(map(str, listed))},
    )


def needed_mm(body: FreehubBody, cassette: str, speeds: Span) -> Span:
    """What goes behind the largest cog, in mm, over all counts of cogs that the cassette may have."""
    fits = [body.fits(cassette, count) for count in whole_numbers(speeds)]
    needed = [fit.spacer_mm for fit in fits if fit is not None]
    if not needed:
        return NO_SPACER
    return Span(min(each.low for each in needed), max(each.high for each in needed))


@rule(
    title="The spacers behind the cassette are in stock",
    weight=Weight.CAUTIONS,
    applies="Where the bike has a cassette of an interface that goes onto the body.",
    expects="No spacer is needed, or spacers of the catalogue add up to what goes behind the largest cog.",
    assumes="Where the table gives a range, the cassette's own sheet says which end of it holds.",
    source=BODIES,
    settled_by=("drivetrain", "cassette_interface", "cassette_speeds"),
    says=Says(
        passed="Spacers behind the largest cog: {needed_mm}; this catalogue has what is needed.",
        failed="Spacers behind the largest cog: {needed_mm}; none in this catalogue add up to that.",
        not_known="Count the cogs on the rear wheel.",
        remedy="Order spacers of {needed_mm} for this body; without them the lockring bottoms "
        "before it clamps the cogs.",
    ),
)
def cassette_spacer(
    bike: Bike, freehub: Freehub, standards: Standards, stock: Catalogue
) -> Check | Inapplicable:
    """Spacers add up, and all of them go behind the largest cog."""
    if reason := no_cassette(bike):
        return reason
    body, cassette = standards.body(freehub.interface), bike.cassette_interface
    if not body.takes_interface(cassette):
        return OFF_THE_BODY

    def in_stock(count: int) -> Truth:
        fit = body.fits(cassette, count)
        return Truth.of(yes=fit is None or spacers_behind(fit.spacer_mm, body.id, stock.spacers) is not None)

    values = {"needed_mm": needed_mm(body, cassette, bike.cassette_speeds)}
    return Check.of_truth(for_every_count(bike.cassette_speeds, in_stock), body.provenance, values)
