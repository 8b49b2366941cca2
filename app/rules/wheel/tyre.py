"""Whether the bike's tyre sits well on the rim that the wheel is built with."""

from __future__ import annotations

from fractions import Fraction

from app.catalogue.catalogue import Catalogue
from app.catalogue.hub_parts import Hub
from app.catalogue.provenance import Provenance
from app.catalogue.standards import Standards
from app.catalogue.wheel_parts import Rim
from app.facts.bike import Bike
from app.facts.span import THOUSAND, Span
from app.facts.truth import Truth
from app.mechanics.chosen_parts import any_of, holes_agree, rim_of, rims_for
from app.mechanics.counts import same
from app.mechanics.wheel_size import tyres_for_rim
from app.rules.check import Check, Inapplicable, Limit, Missing
from app.rules.outcome import Outcome, Weight, decide
from app.rules.rule import Says, Source, rule
from app.rules.wheel.applies import BARE_HUB, READY_LACED

ETRTO = Source("Usual tyre widths for a rim", "from memory, after the idea of ISO 5775-1")


def tyre_on(tyre_mm: Span, inner_width_mm: Span, standards: Standards) -> Check:
    """The tyre's width against what a rim of that inner width takes."""
    least = Fraction(standards.limit("tyre_per_rim_least").value.low, THOUSAND)
    most = Fraction(standards.limit("tyre_per_rim_most").value.high, THOUSAND)
    narrowest, widest = tyres_for_rim(inner_width_mm, standards.rim_tyres, least, most)
    return Check(
        reading=tyre_mm,
        unit="mm",
        low=Limit(narrowest, Provenance.MEMORY),
        high=Limit(widest, Provenance.MEMORY),
        values={"inner_width_mm": inner_width_mm},
    )


SAYS = Says(
    passed="Tyre {reading} on a rim of {inner_width_mm} inside; usual are {low} to {high}. "
    "At worst {margin} in hand.",
    failed="Tyre {reading} on a rim of {inner_width_mm} inside; usual are {low} to {high}. "
    "At best {margin} too narrow.",
    failed_high="Tyre {reading} on a rim of {inner_width_mm} inside; usual are {low} to {high}. "
    "At best {margin} too wide.",
    not_known="Read the size on the tyre, and measure the rim between its side walls.",
    remedy="Take a wider tyre, as far as frame and mudguard leave room.",
    remedy_high="Take a narrower tyre, or a wider rim.",
)


@rule(
    title="The tyre suits the bike's own rim",
    weight=Weight.CAUTIONS,
    applies="Where the hub comes bare, and so can be laced into the bike's rim.",
    expects="The tyre is as wide as is usual for the rim's inner width.",
    assumes="The bike keeps its rim and its tyre.",
    source=ETRTO,
    settled_by=("tyre_width_mm", "rim_inner_width_mm"),
    says=SAYS,
)
def tyre_on_rim(bike: Bike, hub: Hub, standards: Standards) -> Check | Inapplicable:
    """Too narrow a tyre leaves the rim open to the kerb, too wide a one folds over it."""
    if hub.laced_into is not None:
        return READY_LACED
    return tyre_on(bike.tyre_width_mm, bike.rim_inner_width_mm, standards)


@rule(
    title="The tyre suits the rim of the ready-laced wheel",
    weight=Weight.CAUTIONS,
    applies="Where the hub comes laced into a rim.",
    expects="The tyre is as wide as is usual for the rim's inner width.",
    assumes="The bike keeps its tyre.",
    source=ETRTO,
    settled_by=("tyre_width_mm",),
    says=SAYS,
)
def tyre_on_ready_wheel(
    bike: Bike, hub: Hub, standards: Standards, stock: Catalogue
) -> Check | Inapplicable | Missing:
    """The rim is a part here, so its width is known."""
    if hub.laced_into is None:
        return BARE_HUB
    rim = rim_of(hub, stock.rims)
    if rim is None:
        return Missing(hub, "laced_into")
    return tyre_on(bike.tyre_width_mm, rim.inner_width_mm, standards)


_TRUTH = {Outcome.PASSED: Truth.YES, Outcome.FAILED: Truth.NO, Outcome.CANT_TELL: Truth.UNKNOWN}


@rule(
    title="Where another rim is needed, one suits the tyre",
    weight=Weight.CAUTIONS,
    applies="Where the hub comes bare.",
    expects="The bike's own rim can be laced to the hub, or a rim of the catalogue has the hub's holes, "
    "the bike's bead seat and a usual width for the tyre.",
    assumes="The bike keeps its tyre.",
    source=ETRTO,
    settled_by=("rim_holes", "bead_seat_mm", "tyre_width_mm"),
    says=Says(
        passed="The bike keeps its rim of {rim_holes} holes, or a rim of this catalogue suits "
        "the tyre of {tyre_width_mm}.",
        failed="The bike's rim of {rim_holes} holes can't be laced to the hub, and no rim of this catalogue "
        "for it suits the tyre of {tyre_width_mm}.",
        not_known="Count the spokes of the rear wheel, and read the size on the tyre.",
        remedy="Take a tyre of a width that is usual for the new rim.",
    ),
)
def tyre_on_new_rim(bike: Bike, hub: Hub, standards: Standards, stock: Catalogue) -> Check | Inapplicable:
    """A new rim is often wider than the old one."""
    if hub.laced_into is not None:
        return READY_LACED

    def suits(rim: Rim) -> Truth:
        found = decide(tyre_on(bike.tyre_width_mm, rim.inner_width_mm, standards), Weight.CAUTIONS)
        return same(bike.bead_seat_mm, rim.bead_seat_mm) & _TRUTH[found.outcome]

    suited = holes_agree(bike.rim_holes, hub) | any_of(suits(rim) for rim in rims_for(hub, stock.rims))
    values = {"rim_holes": bike.rim_holes, "tyre_width_mm": bike.tyre_width_mm}
    return Check.of_truth(suited, Provenance.MEMORY, values)
