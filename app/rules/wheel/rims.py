"""Whether a rim can be laced to the hub: the bike's own, or one from stock."""

from __future__ import annotations

from app.catalogue.catalogue import Catalogue
from app.catalogue.hub_parts import Hub
from app.facts.bike import Bike
from app.facts.span import Span
from app.facts.truth import Truth
from app.mechanics.chosen_parts import any_of, holes_agree, rim_of, rims_for
from app.mechanics.counts import same
from app.rules.check import Check, Inapplicable, Missing, of_part
from app.rules.outcome import Weight
from app.rules.rule import PART_DATA, Says, Source, rule
from app.rules.wheel.applies import READY_LACED

COUNTED = Source("The hub's and the rim's own data", "number of spoke holes")


@rule(
    title="There is a rim with as many holes as the hub",
    weight=Weight.BLOCKS,
    applies="Where the hub comes bare.",
    expects="The bike's own rim has as many holes as the hub, or a rim of the catalogue has them "
    "and the bike's bead seat.",
    assumes="No hole is left out.",
    source=COUNTED,
    settled_by=("rim_holes", "bead_seat_mm"),
    says=Says(
        passed="The hub has {hub_holes} holes, the bike's rim {rim_holes}. Either that rim has as many, "
        "or one of this catalogue with a bead seat of {bead_seat_mm}.",
        failed="The hub has {hub_holes} holes, the bike's rim {rim_holes}; no rim of this catalogue has "
        "as many and a bead seat of {bead_seat_mm}.",
        not_known="Count the spokes of the rear wheel, and read the second number of the size on the tyre.",
        remedy="Order a rim with {hub_holes} holes and a bead seat of {bead_seat_mm}.",
    ),
)
def spoke_holes(bike: Bike, hub: Hub, stock: Catalogue) -> Check | Inapplicable:
    """Either rim will do."""
    if hub.laced_into is not None:
        return READY_LACED
    from_stock = any_of(same(bike.bead_seat_mm, rim.bead_seat_mm) for rim in rims_for(hub, stock.rims))
    values = {
        "hub_holes": Span.exactly(hub.spoke_holes),
        "rim_holes": bike.rim_holes,
        "bead_seat_mm": bike.bead_seat_mm,
    }
    return Check.of_truth(holes_agree(bike.rim_holes, hub) | from_stock, values=values)


@rule(
    title="The bike keeps its own rim",
    weight=Weight.CAUTIONS,
    applies="Where the hub comes bare.",
    expects="The bike's rim has as many holes as the hub.",
    assumes="The rim is round, uncracked and not worn through by brake pads.",
    source=COUNTED,
    settled_by=("rim_holes",),
    says=Says(
        passed="The bike's rim has {reading} holes, the hub {low}.",
        failed="The bike's rim has {reading} holes, the hub {low}: it needs another rim.",
        not_known="Count the spokes of the rear wheel.",
        remedy="Take a rim with {low} holes and the bike's bead seat.",
    ),
)
def own_rim(bike: Bike, hub: Hub) -> Check | Inapplicable:
    """A rim can't be laced with holes left over."""
    if hub.laced_into is not None:
        return READY_LACED
    holes = of_part(Span.exactly(hub.spoke_holes))
    return Check(reading=bike.rim_holes, low=holes, high=holes)


@rule(
    title="The rim brake keeps a brake track",
    weight=Weight.BLOCKS,
    applies="Where the bike has a rim brake.",
    expects="The wheel gets the bike's own rim, or one with a brake track and the bike's bead seat, "
    "so that the pads meet it where they are.",
    assumes="The bike's own rim has a brake track that isn't worn out.",
    source=PART_DATA,
    settled_by=("rear_brake", "rim_holes", "bead_seat_mm"),
    says=Says(
        passed="The brake track is that of the bike's own rim of {rim_holes} holes, or of one of this "
        "catalogue with a bead seat of {bead_seat_mm}.",
        failed="The bike's rim of {rim_holes} holes can't be laced to the hub, and no rim of this catalogue "
        "for it has a brake track and a bead seat of {bead_seat_mm}.",
        not_known="Count the spokes of the rear wheel, and read the second number of the size on the tyre.",
        remedy="Order a rim with a brake track and a bead seat of {bead_seat_mm}.",
    ),
)
def rim_brake_track(bike: Bike, hub: Hub, stock: Catalogue) -> Check | Inapplicable | Missing:
    """Another bead seat would move the track by half the difference, away from the pads."""
    if bike.rear_brake != "rim":
        return Inapplicable("The bike has no rim brake at the rear.")
    own = holes_agree(bike.rim_holes, hub)
    rims = rims_for(hub, stock.rims)
    if hub.laced_into is not None:
        rim = rim_of(hub, stock.rims)
        if rim is None:
            return Missing(hub, "laced_into")
        own, rims = Truth.NO, (rim,)
    tracks = (same(bike.bead_seat_mm, rim.bead_seat_mm) for rim in rims if rim.brake_track)
    return Check.of_truth(
        own | any_of(tracks), values={"rim_holes": bike.rim_holes, "bead_seat_mm": bike.bead_seat_mm}
    )
