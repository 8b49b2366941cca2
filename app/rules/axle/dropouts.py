"""Whether the dropouts are of the kind that the axle set is for, and whether it sits flat on their faces."""

from __future__ import annotations

from app.catalogue.hub_parts import AxleSet
from app.catalogue.standards import Standards
from app.facts.bike import Bike
from app.facts.truth import Truth
from app.rules.axle.applies import another_kind
from app.rules.check import Check, Inapplicable, Missing, of_row
from app.rules.outcome import Weight
from app.rules.rule import PART_DATA, Says, Source, rule


@rule(
    title="The dropouts are open for the axle",
    weight=Weight.BLOCKS,
    applies="Where the axle set has an axle of its own, with a quick release or with nuts.",
    expects="The slots open the way that the axle set is made for.",
    assumes="The dropouts are as the frame maker left them, not cut open.",
    source=PART_DATA,
    stops_as=5,
    settled_by=("dropout_kind",),
    says=Says(
        passed="This axle set is made for the slots of this frame.",
        failed="This axle set is not made for the dropouts of this frame.",
        not_known="Look from the left which way the dropouts open.",
        remedy="Take an axle set for the dropouts that the frame has. "
        "A closed dropout is never drilled, slotted or filed open.",
    ),
)
def open_dropouts(bike: Bike, axle_set: AxleSet) -> Check | Inapplicable:
    """An axle with nuts or a skewer can't be entered into a closed dropout from the side."""
    if axle_set.end == "thru":
        return Inapplicable("This axle set is held by the frame's thru-axle.")
    return Check.of_truth(Truth.of(yes=bike.dropout_kind in axle_set.dropout_kinds))


@rule(
    title="The dropouts are closed for a thru-axle",
    weight=Weight.BLOCKS,
    applies="Where the frame's thru-axle is to hold the hub.",
    expects="The dropouts are closed and hold a thru-axle.",
    assumes="The thru-axle of the frame is at hand.",
    source=PART_DATA,
    stops_as=5,
    settled_by=("dropout_kind",),
    says=Says(
        passed="The dropouts are closed, and the thru-axle holds this axle set.",
        failed="The dropouts are open slots; this axle set needs a thru-axle through closed ones.",
        not_known="Look from the left whether the dropouts are slots or closed holes.",
        remedy="Take an axle set for slotted dropouts.",
    ),
)
def closed_dropouts(bike: Bike, axle_set: AxleSet) -> Check | Inapplicable:
    """A hub for a thru-axle has no axle of its own to lie in a slot."""
    if axle_set.end != "thru":
        return Inapplicable("This axle set has an axle of its own.")
    return Check.of_truth(Truth.of(yes=bike.dropout_kind in axle_set.dropout_kinds))


@rule(
    title="The left dropout lets the axle set lie flat",
    weight=Weight.CAUTIONS,
    applies="Where the outside of the left dropout is recessed or hooded.",
    expects="What must lie flat fits inside the ring of a recess, or within the hood of the stay ends.",
    assumes="The ring is 20 to 24 mm across; a hood leaves 12 to 20 mm around the axle's centre.",
    source=Source("From memory"),
    settled_by=("dropout_kind", "dropout_face"),
    says=Says(
        passed="A {dropout_face} dropout is flat for {high} around the axle; this axle set needs {reading}.",
        failed="A {dropout_face} dropout is flat for {high} around the axle; this axle set needs {reading}.",
        not_known="Look at the outside of the left dropout: is it flat around the axle?",
        remedy="Lay a filler washer into a recess until it stands level with its ring. "
        "Under a hood, bring washer and nut clear of the stay ends with a thick, narrow washer.",
    ),
)
def dropout_face(bike: Bike, axle_set: AxleSet, standards: Standards) -> Check | Inapplicable | Missing:
    """A plate on a ring or against a stay end tilts, and its nut works loose."""
    if bike.dropout_face == "flat":
        return Inapplicable("The left dropout is flat around the axle.")
    if elsewhere := another_kind(bike, axle_set):
        return elsewhere
    if axle_set.flat_face_radius_mm is None:
        return Missing(axle_set, "flat_face_radius_mm")
    free = standards.limit("recess_radius_mm" if bike.dropout_face == "recessed" else "hood_radius_mm")
    values = {"dropout_face": bike.dropout_face}
    return Check(reading=axle_set.flat_face_radius_mm, unit="mm", high=of_row(free), values=values)


@rule(
    title="The axle set takes the drive-side face that the hanger makes",
    weight=Weight.BLOCKS,
    applies="Where the axle set is made for the kind of dropout the bike has.",
    expects="The hanger is one of those whose face the axle set takes.",
    assumes="The hanger is straight and its bolt sits below the face.",
    source=PART_DATA,
    settled_by=("dropout_kind", "hanger"),
    says=Says(
        passed="This axle set takes the drive side of a frame with this hanger.",
        failed="This axle set does not take the drive side of a frame with this hanger.",
        not_known="Look behind the right dropout how the hanger is held.",
        remedy="Take an axle set that is made for this hanger, "
        "or fit a hanger of another kind if the frame maker has one.",
    ),
)
def hanger(bike: Bike, axle_set: AxleSet) -> Check | Inapplicable:
    """A hanger that the thru-axle clamps is itself the face that the hub's end meets."""
    if elsewhere := another_kind(bike, axle_set):
        return elsewhere
    if bike.hanger == "axle_clamped" and bike.dropout_kind != "thru_axle":
        return Inapplicable("No thru-axle clamps a hanger in open dropouts.")
    return Check.of_truth(Truth.of(yes=bike.hanger in axle_set.hangers))
