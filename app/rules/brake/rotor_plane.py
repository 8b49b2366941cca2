"""Whether the rotor runs where the caliper expects it, and whether shims can make up the rest."""

from __future__ import annotations

from app.catalogue.hub_parts import AxleSet, Hub
from app.catalogue.provenance import Provenance
from app.catalogue.standards import Standards
from app.facts.bike import Bike
from app.facts.span import Span
from app.mechanics.axial_stack import rotor_shift
from app.mechanics.rotor_shims import shims_for
from app.rules.axle.applies import another_kind, socket_depth
from app.rules.brake.applies import no_rotor
from app.rules.check import Check, Inapplicable, Limit, Missing, habit, of_part
from app.rules.outcome import Weight
from app.rules.rule import PRACTICE, Says, rule

# The slots of a caliper take up the first millimetre; the trade shims no more than another one and a half.
SLOTS = habit(1)
SHIMMED = Limit(Span.exactly("2.5"), Provenance.PRACTICE_STOPS, source="Common practice")

ASSUMES = "The bike keeps its rotor and its caliper, and the caliper is lined up with the rotor now."
SETTLED_BY = ("rear_brake", "dropout_kind", "socket_depth_mm", "rotor_thickness_mm", "rotor_offset_mm")
NOT_KNOWN = "Measure the rotor's thickness, its distance from the dropout and the depth of closed sockets."


def _concerns(bike: Bike, hub: Hub, axle_set: AxleSet) -> Inapplicable | None:
    return no_rotor(bike, hub) or another_kind(bike, axle_set)


def _shift(bike: Bike, rotor_seat_mm: Span) -> Span:
    return rotor_shift(
        rotor_seat_mm=rotor_seat_mm,
        socket_depth_mm=socket_depth(bike),
        rotor_thickness_mm=bike.rotor_thickness_mm,
        rotor_offset_mm=bike.rotor_offset_mm,
    )


def _shims(shift_mm: Span, standards: Standards) -> dict[str, Span | str]:
    """How many shims bring the rotor back, and how thick they are."""
    thick, thin = standards.limit("shim_thick_mm").value, standards.limit("shim_thin_mm").value
    shims = shims_for(shift_mm, thick_mm=thick, thin_mm=thin)
    return {
        "shims_mm": shims.total_mm,
        "thick_shims": str(shims.thick),
        "thick_mm": thick,
        "thin_shims": str(shims.thin),
        "thin_mm": thin,
    }


def _taken_up(axle_set: AxleSet) -> Limit:
    """As far as slots and the axle set's own shims reach; what the trade shims where its maker is silent."""
    shims = axle_set.rotor_shims_mm
    return SHIMMED if shims is None else of_part(SLOTS.value + shims)


@rule(
    title="The rotor can run where the caliper expects it",
    weight=Weight.BLOCKS,
    applies="Where a disc brake stays and the axle set is made for the kind of dropout the bike has.",
    expects="Rotor and caliper are no further apart along the axle than slots and shims take up.",
    assumes=ASSUMES,
    source=PRACTICE,
    settled_by=SETTLED_BY,
    limits=(SLOTS, SHIMMED),
    says=Says(
        passed="Rotor off its old plane by {reading}, plus is inboard; {low} to {high} can be taken up.",
        failed="Rotor off its old plane by {reading}, plus is inboard; {low} to {high} can be taken up. "
        "At best {margin} too far out.",
        failed_high="Rotor off its old plane by {reading}, plus is inboard; {low} to {high} can be taken up. "
        "At best {margin} too far in.",
        not_known=NOT_KNOWN,
        remedy="Take an axle set whose rotor seat lies further in.",
        remedy_high="Take an axle set whose rotor seat lies further out.",
    ),
)
def rotor_plane(bike: Bike, hub: Hub, axle_set: AxleSet) -> Check | Inapplicable | Missing:
    if elsewhere := _concerns(bike, hub, axle_set):
        return elsewhere
    if axle_set.rotor_seat_mm is None:
        return Missing(axle_set, "rotor_seat_mm")
    most = _taken_up(axle_set)
    least = Limit(-most.value, most.provenance, source=most.source)
    return Check(reading=_shift(bike, axle_set.rotor_seat_mm), unit="mm", low=least, high=most)


@rule(
    title="The rotor needs no shims",
    weight=Weight.CAUTIONS,
    applies="Where a disc brake stays and the axle set is made for the kind of dropout the bike has.",
    expects="Rotor and caliper are at most 1 mm apart along the axle, which the caliper's slots take up.",
    assumes=ASSUMES,
    source=PRACTICE,
    settled_by=SETTLED_BY,
    version=2,
    limits=(SLOTS,),
    says=Says(
        passed="Rotor off its old plane by {reading}, plus is inboard; the caliper takes {low} to {high}.",
        failed="Rotor off its old plane by {reading}, plus is inboard; the caliper takes {low} to {high}. "
        "At best {margin} too far out.",
        failed_high="Rotor off its old plane by {reading}, plus is inboard; "
        "the caliper takes {low} to {high}. At best {margin} too far in.",
        not_known=NOT_KNOWN,
        remedy="Move the caliper out by {shims_mm}: {thick_shims} of its shims of {thick_mm} and "
        "{thin_shims} of {thin_mm} come out. Have its seat checked where there are none.",
        remedy_high="Shim the caliper in, or the rotor out, by {shims_mm}: {thick_shims} of {thick_mm} and "
        "{thin_shims} of {thin_mm}. Under a rotor 2 mm at the most, with longer bolts.",
    ),
)
def rotor_plane_shims(
    bike: Bike, hub: Hub, axle_set: AxleSet, standards: Standards
) -> Check | Inapplicable | Missing:
    if elsewhere := _concerns(bike, hub, axle_set):
        return elsewhere
    if axle_set.rotor_seat_mm is None:
        return Missing(axle_set, "rotor_seat_mm")
    shift = _shift(bike, axle_set.rotor_seat_mm)
    return Check(reading=shift, unit="mm", low=habit(-1), high=SLOTS, values=_shims(shift, standards))
