"""The head of the frame's thru-axle: what it presses on once the kit lies under it."""

from __future__ import annotations

from app.catalogue.hub_parts import AxleSet
from app.catalogue.provenance import Provenance
from app.facts.bike import Bike
from app.facts.truth import Truth
from app.rules.axle.applies import no_thru_axle
from app.rules.check import Check, Inapplicable, Missing
from app.rules.outcome import Weight
from app.rules.rule import PART_DATA, PRACTICE, Says, rule


@rule(
    title="The head of the thru-axle sits on the axle set",
    weight=Weight.CAUTIONS,
    applies="Where the frame's thru-axle is to hold the hub.",
    expects="The underside of the head has a shape that the axle set takes.",
    assumes="The head's own washer or cone stays with the axle.",
    source=PART_DATA,
    settled_by=("dropout_kind", "thru_axle_head"),
    says=Says(
        passed="A {thru_axle_head} head; this axle set takes {thru_heads}.",
        failed="A {thru_axle_head} head; this axle set takes {thru_heads}.",
        not_known="Look at the underside of the thru-axle's head.",
        remedy="Order a thru-axle with a head that this set takes, or put a matching washer under the head.",
    ),
)
def thru_axle_head(bike: Bike, axle_set: AxleSet) -> Check | Inapplicable | Missing:
    """A cone on a flat plate presses on its edge, and a sunk head does not reach the plate at all."""
    if elsewhere := no_thru_axle(bike, axle_set):
        return elsewhere
    if not axle_set.thru_heads:
        return Missing(axle_set, "thru_heads")
    values = {"thru_axle_head": bike.thru_axle_head, "thru_heads": " or ".join(axle_set.thru_heads)}
    return Check.of_truth(Truth.of(yes=bike.thru_axle_head in axle_set.thru_heads), values=values)


@rule(
    title="The head of the thru-axle is on the left",
    weight=Weight.CAUTIONS,
    applies="Where the axle set lays something under the head of the frame's thru-axle.",
    expects="The thru-axle screws into the right dropout, so that its head clamps the left side.",
    assumes="The parts of the torque arm lie on the left.",
    source=PRACTICE,
    settled_by=("dropout_kind", "thru_axle_thread_side"),
    says=Says(
        passed="The thread is on the right: the head clamps what this set lays on the left.",
        failed="The thread is on the left: no head clamps what this set lays there.",
        not_known="Look on which side the thru-axle has no head: the thread is there.",
        remedy="Ask the maker of the axle set for parts that go under a head on the drive side, "
        "and check that the derailleur clears them.",
    ),
)
def thru_axle_thread_side(bike: Bike, axle_set: AxleSet) -> Check | Inapplicable | Missing:
    """Most frames hold the thread in the drive-side dropout; a few are the other way round."""
    if elsewhere := no_thru_axle(bike, axle_set):
        return elsewhere
    if axle_set.under_head_mm is None:
        return Missing(axle_set, "under_head_mm")
    if axle_set.under_head_mm.high == 0:
        return Inapplicable("This axle set lays nothing under the head of the thru-axle.")
    return Check.of_truth(Truth.of(yes=bike.thru_axle_thread_side == "right"), Provenance.PRACTICE)
