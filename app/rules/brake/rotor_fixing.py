"""Whether the bike's rotor goes onto the hub: its bolts or its splines."""

from __future__ import annotations

from app.catalogue.catalogue import Catalogue
from app.catalogue.hub_parts import Hub
from app.catalogue.wheel_parts import Adapter
from app.facts.bike import Bike
from app.facts.truth import Truth
from app.rules.brake.applies import no_rotor
from app.rules.check import Check, Inapplicable
from app.rules.outcome import Weight
from app.rules.rule import PART_DATA, PRACTICE, Says, rule

NOTHING_JOINS_THEM = Inapplicable("No adapter in stock joins this rotor to this hub.")


def _adapter(bike: Bike, hub: Hub, stock: Catalogue) -> Adapter | None:
    """One way only: a rotor with splines has no place on six bolts."""
    joins = (each for each in stock.adapters if each.joins == "rotor")
    return next((each for each in joins if (each.of, each.to) == (bike.rotor_fixing, hub.rotor_fixing)), None)


@rule(
    title="The rotor goes onto the hub",
    weight=Weight.BLOCKS,
    applies="Where a disc brake stays and the hub carries a rotor.",
    expects="Rotor and hub have the same fixing, or an adapter in stock joins them.",
    assumes="Six bolts are on the usual circle of 44 mm.",
    source=PART_DATA,
    settled_by=("rear_brake", "rotor_fixing"),
    says=Says(
        passed="The rotor's fixing goes with the hub's.",
        failed="The rotor's fixing doesn't go with the hub's, and no adapter in stock joins them.",
        not_known="Look at the middle of the rotor: six bolts or one ring.",
        remedy="Fit a rotor of the same size with the hub's fixing.",
    ),
)
def rotor_fixing(bike: Bike, hub: Hub, stock: Catalogue) -> Check | Inapplicable:
    if elsewhere := no_rotor(bike, hub):
        return elsewhere
    same = bike.rotor_fixing == hub.rotor_fixing
    return Check.of_truth(Truth.of(yes=same or _adapter(bike, hub, stock) is not None))


@rule(
    title="The rotor needs no adapter",
    weight=Weight.CAUTIONS,
    applies="Where a disc brake stays and the rotor goes onto the hub.",
    expects="Rotor and hub have the same fixing.",
    assumes="An adapter can shift the rotor by up to 0.5 mm along the axle.",
    source=PRACTICE,
    settled_by=("rear_brake", "rotor_fixing"),
    says=Says(
        passed="The rotor goes onto the hub as it is.",
        failed="Rotor and hub are joined by an adapter, which can shift the rotor by up to 0.5 mm.",
        not_known="Look at the middle of the rotor: six bolts or one ring.",
        remedy="Fit the adapter, then line the caliper up with the rotor; "
        "or fit a rotor with the hub's fixing.",
    ),
)
def rotor_adapter(bike: Bike, hub: Hub, stock: Catalogue) -> Check | Inapplicable:
    if elsewhere := no_rotor(bike, hub):
        return elsewhere
    if bike.rotor_fixing == hub.rotor_fixing:
        return Check.of_truth(Truth.YES)
    return Check.of_truth(Truth.NO) if _adapter(bike, hub, stock) else NOTHING_JOINS_THEM
