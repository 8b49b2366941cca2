"""Whether the rotor, on its new hub, keeps off the left chainstay."""

from __future__ import annotations

from app.catalogue.hub_parts import AxleSet, Hub
from app.catalogue.provenance import Provenance
from app.catalogue.standards import Standards
from app.facts.bike import Bike
from app.facts.span import Span
from app.mechanics.axial_stack import from_lip, rotor_shift
from app.mechanics.rotor_and_stay import rotor_to_stay
from app.rules.axle.applies import another_kind, socket_depth
from app.rules.axle.beside_stay import left_stay
from app.rules.brake.applies import no_rotor
from app.rules.brake.rotor_plane import SLOTS
from app.rules.check import Check, Inapplicable, Limit, Missing
from app.rules.outcome import Weight
from app.rules.rule import PRACTICE, Says, rule

NOT_NEARER = Limit(
    Span(0, 0), Provenance.ESTIMATE, source="Common practice; how far the stay leans in is an estimate"
)


def _to_stay(bike: Bike, seat_mm: Span, standards: Standards) -> Span:
    return rotor_to_stay(
        stay=left_stay(bike, standards),
        seat_mm=from_lip(from_floor_mm=seat_mm, socket_depth_mm=socket_depth(bike)),
        rotor_thickness_mm=bike.rotor_thickness_mm,
        rotor_diameter_mm=bike.rotor_diameter_mm,
    )


def _shift(bike: Bike, seat_mm: Span) -> Span:
    return rotor_shift(
        rotor_seat_mm=seat_mm,
        socket_depth_mm=socket_depth(bike),
        rotor_thickness_mm=bike.rotor_thickness_mm,
        rotor_offset_mm=bike.rotor_offset_mm,
    )


@rule(
    title="The rotor keeps off the chainstay",
    weight=Weight.CAUTIONS,
    applies="Where a disc brake stays and the axle set is made for the kind of dropout the bike has.",
    expects="The rotor's edge is 2 mm from the stay, or at most 1 mm further out than it runs now.",
    assumes="The stay was measured a hand's width in front of the axle and leans in evenly. "
    "The rotor doesn't touch it now.",
    source=PRACTICE,
    settled_by=(
        *("rear_brake", "dropout_kind", "socket_depth_mm", "rotor_diameter_mm", "rotor_thickness_mm"),
        *("rotor_offset_mm", "chainstay_length_mm", "stay_lateral_mm", "stay_width_mm"),
    ),
    limits=(NOT_NEARER, SLOTS),
    says=Says(
        passed="From stay to rotor {to_stay_mm}, {wanted_mm} is wanted; the rotor runs {shift_mm} off its "
        "old plane, plus is inboard. Room or no move outward is enough.",
        failed="From stay to rotor {to_stay_mm}, {wanted_mm} is wanted; the rotor runs {shift_mm} off its "
        "old plane, minus is outboard and nearer to the stay.",
        not_known="Measure how far in the middle of the left stay is, how wide the stay is, "
        "and the rotor's distance from the dropout.",
        remedy="Hold the wheel in and turn it. With less than {wanted_mm} to the stay take an axle set whose "
        "rotor seat lies further in, or fit a smaller rotor with its adapter.",
    ),
)
def rotor_beside_stay(
    bike: Bike, hub: Hub, axle_set: AxleSet, standards: Standards
) -> Check | Inapplicable | Missing:
    if elsewhere := no_rotor(bike, hub) or another_kind(bike, axle_set):
        return elsewhere
    if axle_set.rotor_seat_mm is None:
        return Missing(axle_set, "rotor_seat_mm")
    to_stay, shift = _to_stay(bike, axle_set.rotor_seat_mm, standards), _shift(bike, axle_set.rotor_seat_mm)
    wanted = standards.limit("beside_stay_mm").value
    spare = (to_stay - wanted).at_least(shift + SLOTS.value)
    values = {"to_stay_mm": to_stay, "wanted_mm": wanted, "shift_mm": shift}
    return Check(reading=spare, unit="mm", low=NOT_NEARER, values=values)
