"""The width of the rear end against that of the axle set."""

from __future__ import annotations

from app.catalogue.hub_parts import AxleSet
from app.catalogue.standards import Standards
from app.facts.bike import Bike
from app.facts.span import Span
from app.rules.check import Check, Inapplicable, of_part
from app.rules.outcome import Weight
from app.rules.rule import PART_DATA, Says, rule


def floor_to_floor(bike: Bike) -> Span:
    """The width that the hub's ends meet: closed dropouts add the depth of both sockets to the lip-to-lip reading."""
    if bike.dropout_kind == "thru_axle":
        return bike.dropout_width_mm + bike.socket_depth_mm.times(2)
    return bike.dropout_width_mm


def allowance(bike: Bike, standards: Standards) -> tuple[int, int]:
    """How far the rear end may be opened and closed for a wheel, in thousandths of a millimetre."""
    if bike.dropout_kind == "thru_axle":
        return 0, 0
    heat_treated = bike.frame_material == "steel" and bike.frame_heat_treated == "yes"
    spread = standards.spread(bike.frame_material, heat_treated=heat_treated)
    return spread.opening_mm.low, spread.closing_mm.low


@rule(
    title="Dropout width suits the axle set",
    weight=Weight.BLOCKS,
    applies="Where the axle set is made for the kind of dropout the bike has.",
    expects="The rear end is as wide as the axle set takes, or its material may be sprung that far.",
    assumes="The dropouts are parallel and the frame is not bent.",
    source=PART_DATA,
    settled_by=("dropout_kind", "dropout_width_mm", "socket_depth_mm", "frame_material", "frame_heat_treated"),
    says=Says(
        passed="Rear end {reading}; this axle set takes {takes_low_mm} to {takes_high_mm}. At worst {margin} in hand.",
        failed="Rear end {reading}; this axle set takes {takes_low_mm} to {takes_high_mm}, "
        "and the frame may open {opens_mm}. At best {margin} too narrow.",
        failed_high="Rear end {reading}; this axle set takes {takes_low_mm} to {takes_high_mm}, "
        "and the frame may close {closes_mm}. At best {margin} too wide.",
        not_known="Measure between the inner faces of the dropouts, and the depth of closed sockets.",
        remedy="Take an axle set for a narrower rear end.",
        remedy_high="Take an axle set for a wider rear end.",
    ),
)
def dropout_width(bike: Bike, axle_set: AxleSet, standards: Standards) -> Check | Inapplicable:
    """The maker's own width, widened by what the frame may spring."""
    if bike.dropout_kind not in axle_set.dropout_kinds:
        return Inapplicable("This axle set is for another kind of dropout.")
    opens, closes = allowance(bike, standards)
    low, high = axle_set.takes_low_mm, axle_set.takes_high_mm
    return Check(
        reading=floor_to_floor(bike),
        unit="mm",
        low=of_part(low - Span(opens, opens)),
        high=of_part(high + Span(closes, closes)),
        values={
            "takes_low_mm": low,
            "takes_high_mm": high,
            "opens_mm": Span(opens, opens),
            "closes_mm": Span(closes, closes),
        },
    )
