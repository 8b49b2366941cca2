"""The slots of open dropouts: whether the axle goes in, how much it may rock, and where it may slide."""

from __future__ import annotations

from app.catalogue.hub_parts import AxleSet, Hub
from app.catalogue.provenance import Provenance
from app.catalogue.standards import Standards
from app.facts.bike import Bike
from app.facts.truth import Truth
from app.mechanics.rear_end import short_by_mm
from app.rules.axle.applies import another_kind
from app.rules.check import Check, Inapplicable, Missing, of_part, of_row
from app.rules.outcome import Weight
from app.rules.rule import PART_DATA, PRACTICE, Says, rule

HELD_IN_CLOSED_DROPOUTS = Inapplicable("This axle set has no axle end that lies in a slot.")


@rule(
    title="The slots take the axle's ends",
    weight=Weight.BLOCKS,
    applies="Where the axle set has an axle of its own for the kind of dropout the bike has.",
    expects="The slot, at its narrowest, is as wide as the end of the axle.",
    assumes="Both slots are as wide as the one that was measured.",
    source=PART_DATA,
    settled_by=("dropout_kind", "slot_width_mm"),
    says=Says(
        passed="Slot {reading}; the axle's end needs {low}. At worst {margin} in hand.",
        failed="Slot {reading}; the axle's end needs {low}. At best {margin} too narrow.",
        not_known="Measure the slot width.",
        remedy="Clean paint and burrs out of the slots and measure again. No more than 0.1 mm of metal "
        "comes off a face, and none beside carbon; if that is too little, take a thinner axle end.",
    ),
)
def slot_width(bike: Bike, axle_set: AxleSet) -> Check | Inapplicable | Missing:
    """An axle that does not reach the closed end of the slot carries the wheel on two edges."""
    if axle_set.end == "thru":
        return HELD_IN_CLOSED_DROPOUTS
    if elsewhere := another_kind(bike, axle_set):
        return elsewhere
    if axle_set.slot_needs_mm is None:
        return Missing(axle_set, "slot_needs_mm")
    return Check(reading=bike.slot_width_mm, unit="mm", low=of_part(axle_set.slot_needs_mm))


@rule(
    title="The flats sit in the slots without play",
    weight=Weight.CAUTIONS,
    applies="Where flats in the slots take the torque of a hub that can brake.",
    expects="The slot is at most 0.1 mm wider than the flats.",
    assumes="The flats of the axle are as wide as the axle set's drawing says.",
    source=PRACTICE,
    settled_by=("dropout_kind", "slot_width_mm"),
    says=Says(
        passed="{reading} of play between slot and flats; up to {high} they stay tight.",
        failed="{reading} of play between slot and flats, where {high} stay tight: "
        "the axle rocks each time the torque turns round.",
        not_known="Measure the slot width.",
        remedy="Let the torque arm take the torque in both directions without play, fit a second arm, "
        "and put a witness mark on the nuts.",
    ),
)
def slot_play(
    bike: Bike, hub: Hub, axle_set: AxleSet, standards: Standards
) -> Check | Inapplicable | Missing:
    """Each change from driving to braking hammers whatever play there is."""
    if not axle_set.flatted:
        return Inapplicable("No flats in the slots take this axle's torque.")
    if not hub.regenerates:
        return Inapplicable("This hub only drives, so the torque never turns round.")
    if elsewhere := another_kind(bike, axle_set):
        return elsewhere
    flats = axle_set.slot_needs_mm
    if flats is None:
        return Missing(axle_set, "slot_needs_mm")
    play = short_by_mm(flats, bike.slot_width_mm)
    return Check(reading=play, unit="mm", high=of_row(standards.limit("slot_play_mm")))


@rule(
    title="The wheel's load keeps the axle in its slots",
    weight=Weight.CAUTIONS,
    applies="Where the axle set has an axle of its own for the kind of dropout the bike has.",
    expects="The slots open downwards, so that neither chain nor motor pulls the axle along them.",
    assumes="The axle touches the closed end of both slots before it is tightened.",
    source=PRACTICE,
    settled_by=("dropout_kind",),
    says=Says(
        passed="The slots open downwards: the load holds the axle at their closed ends.",
        failed="The slots open to the front or to the rear: chain and motor pull the axle along them.",
        not_known="Look from the left which way the dropouts open.",
        remedy="Fit an arm on either side and an axle stop or a chain tensioner in each slot, "
        "and check after 50 km that the axle has not moved.",
    ),
)
def slot_direction(bike: Bike, axle_set: AxleSet) -> Check | Inapplicable:
    """A nut that works loose in a horizontal slot or a track end lets the wheel walk."""
    if axle_set.end == "thru":
        return HELD_IN_CLOSED_DROPOUTS
    if elsewhere := another_kind(bike, axle_set):
        return elsewhere
    downwards = bike.dropout_kind == "slotted_vertical"
    return Check.of_truth(Truth.of(yes=downwards), Provenance.PRACTICE)
