"""The width of the rear end against that of the axle set, and what springing it takes."""

from __future__ import annotations

from app.catalogue.hub_parts import AxleSet
from app.catalogue.standards import Standards
from app.facts.bike import Bike
from app.facts.span import Span
from app.mechanics.rear_end import floor_to_floor_mm, short_by_mm
from app.rules.axle.applies import ANOTHER_KIND, another_kind
from app.rules.check import Check, Inapplicable, of_part, of_row
from app.rules.outcome import Weight
from app.rules.rule import PART_DATA, PRACTICE, Says, rule

NOTHING = Span(0, 0)


def rear_end(bike: Bike) -> Span:
    """The width that the hub's ends meet."""
    if bike.dropout_kind == "thru_axle":
        return floor_to_floor_mm(lip_to_lip_mm=bike.dropout_width_mm, socket_depth_mm=bike.socket_depth_mm)
    return bike.dropout_width_mm


def allowance(bike: Bike, standards: Standards) -> tuple[Span, Span]:
    """How far a rear end may be opened and closed, in mm: not at all for closed dropouts and carbon."""
    if bike.dropout_kind == "thru_axle" or bike.frame_material == "carbon":
        return NOTHING, NOTHING
    heat_treated = bike.frame_heat_treated if bike.frame_material == "steel" else "no"
    spread = standards.spread(bike.frame_material, heat_treated)
    opens, closes = spread.opens_mm.low, spread.closes_mm.low
    return Span(opens, opens), Span(closes, closes)


@rule(
    title="Dropout width suits the axle set",
    weight=Weight.BLOCKS,
    applies="Where the axle set is made for the kind of dropout the bike has.",
    expects="The rear end is as wide as the axle set takes, or its material may be sprung that far.",
    assumes="The dropouts are parallel and the frame is not bent.",
    source=PART_DATA,
    settled_by=(
        "dropout_kind",
        "dropout_width_mm",
        "socket_depth_mm",
        "frame_material",
        "frame_heat_treated",
    ),
    says=Says(
        passed="Rear end {reading}; this axle set takes {takes_low_mm} to {takes_high_mm}; "
        "the frame may open {opens_mm} and close {closes_mm}. At worst {margin} in hand.",
        failed="Rear end {reading}; this axle set takes {takes_low_mm} to {takes_high_mm}; "
        "the frame may open {opens_mm}. At best {margin} too narrow.",
        failed_high="Rear end {reading}; this axle set takes {takes_low_mm} to {takes_high_mm}; "
        "the frame may close {closes_mm}. At best {margin} too wide.",
        not_known="Measure between the inner faces of the dropouts, and the depth of closed sockets.",
        remedy="Take an axle set for a narrower rear end.",
        remedy_high="Take an axle set for a wider rear end.",
    ),
)
def dropout_width(bike: Bike, axle_set: AxleSet, standards: Standards) -> Check | Inapplicable:
    """The maker's own width, widened by what the frame may spring."""
    if bike.dropout_kind not in axle_set.dropout_kinds:
        return ANOTHER_KIND
    opens, closes = allowance(bike, standards)
    low, high = axle_set.takes_low_mm, axle_set.takes_high_mm
    return Check(
        reading=rear_end(bike),
        unit="mm",
        low=of_part(low - opens),
        high=of_part(high + closes),
        values={"takes_low_mm": low, "takes_high_mm": high, "opens_mm": opens, "closes_mm": closes},
    )


@rule(
    title="The axle goes in without spreading or closing the frame",
    weight=Weight.CAUTIONS,
    applies="Where the dropouts are open, the axle set is made for them and the material may be sprung.",
    expects="The rear end, left alone, is as wide as the axle set takes.",
    assumes="The dropouts are parallel and the frame is not bent.",
    source=PART_DATA,
    settled_by=("dropout_kind", "dropout_width_mm", "frame_material", "frame_heat_treated"),
    says=Says(
        passed="Rear end {reading}; this axle set takes {low} to {high}. At worst {margin} in hand.",
        failed="Spread the {frame_material} frame {spread_mm} to fit the axle.",
        failed_high="Close the {frame_material} frame {close_mm} onto the axle.",
        not_known="Measure between the inner faces of the dropouts.",
        remedy="Open both sides by the same amount, then square the dropout faces and the hanger. "
        "Only steel that is not heat treated may be set for good, by a frame builder; "
        "other metals are no more than sprung open by hand while the wheel goes in.",
        remedy_high="Make up the gap with washers on the axle, as many on either side, "
        "so that the nuts don't bend the frame.",
    ),
)
def rear_end_spread(bike: Bike, axle_set: AxleSet, standards: Standards) -> Check | Inapplicable:
    """How far the frame must move, as a job for the workshop."""
    if bike.dropout_kind == "thru_axle":
        return Inapplicable("Closed dropouts are neither spread nor closed.")
    if elsewhere := another_kind(bike, axle_set):
        return elsewhere
    if allowance(bike, standards) == (NOTHING, NOTHING):
        return Inapplicable("A frame of this material is neither spread nor closed.")
    width, low, high = bike.dropout_width_mm, axle_set.takes_low_mm, axle_set.takes_high_mm
    spread, close = short_by_mm(width, low), short_by_mm(high, width)
    values: dict[str, Span | str] = {
        "frame_material": bike.frame_material,
        "spread_mm": spread,
        "close_mm": close,
    }
    return Check(reading=width, unit="mm", low=of_part(low), high=of_part(high), values=values)


@rule(
    title="The quick release holds without springing the frame",
    weight=Weight.CAUTIONS,
    applies="Where a quick release holds the axle in open dropouts.",
    expects="The skewer closes the rear end by at most 1.5 mm, and the hub opens it by at most 0.5 mm.",
    assumes="The dropouts are parallel and the frame is not bent.",
    source=PRACTICE,
    settled_by=("dropout_kind", "dropout_width_mm"),
    says=Says(
        passed="Rear end less hub {reading}; under a quick release {low} to {high} is usual.",
        failed="Open the rear end {opens_mm} over the hub; under a quick release {may_open_mm} is usual.",
        failed_high="Take up {closes_mm} between hub and dropouts; a quick release is to close no more "
        "than {may_close_mm}.",
        not_known="Measure between the inner faces of the dropouts.",
        remedy="Have the rear end set to the hub, or pull the dropouts open by hand at each wheel change "
        "and check that both faces lie flat before the lever is closed.",
        remedy_high="Put washers on the axle, as many on either side, until the hub fills the rear end.",
    ),
)
def quick_release_closing(bike: Bike, axle_set: AxleSet, standards: Standards) -> Check | Inapplicable:
    """A skewer that must bend the frame first has less left to clamp with."""
    if axle_set.end != "quick_release":
        return Inapplicable("This axle set is not held by a quick release.")
    if elsewhere := another_kind(bike, axle_set):
        return elsewhere
    may_open, may_close = standards.limit("qr_opens_mm"), standards.limit("qr_closes_mm")
    return Check(
        reading=bike.dropout_width_mm - axle_set.over_locknut_mm,
        unit="mm",
        low=of_row(may_open, -may_open.value),
        high=of_row(may_close),
        values={
            "opens_mm": short_by_mm(bike.dropout_width_mm, axle_set.over_locknut_mm),
            "closes_mm": short_by_mm(axle_set.over_locknut_mm, bike.dropout_width_mm),
            "may_open_mm": may_open.value,
            "may_close_mm": may_close.value,
        },
    )


@rule(
    title="Closed dropouts sit on the hub's ends without force",
    weight=Weight.CAUTIONS,
    applies="Where the dropouts are closed and the axle set is made for them.",
    expects="Floor to floor is at most 0.2 mm narrower than the hub and 1.0 mm wider; on carbon, 0.5 mm.",
    assumes="Both sockets are as deep as the one that was measured.",
    source=PRACTICE,
    settled_by=("dropout_kind", "dropout_width_mm", "socket_depth_mm", "frame_material"),
    says=Says(
        passed="Floor to floor less hub {reading}; from {low} to {high} the hub sits without force.",
        failed="Tight: floor to floor is {narrower_mm} narrower than the hub; "
        "up to {may_be_narrower_mm} goes in freely.",
        failed_high="The thru-axle would draw the frame in by {wider_mm}; this material bears {high}.",
        not_known="Measure lip to lip with the wheel out, and the depth of the sockets.",
        remedy="Check the frame: clean paint and burrs out of the sockets and measure again. "
        "A closed dropout is never spread.",
        remedy_high="Check the frame and measure again; ask its maker before the axle draws it in.",
    ),
)
def tight_closed_dropout(bike: Bike, axle_set: AxleSet, standards: Standards) -> Check | Inapplicable:
    """Bore and thread stay in line only where the frame need not move."""
    if bike.dropout_kind != "thru_axle":
        return Inapplicable("The dropouts are open.")
    if elsewhere := another_kind(bike, axle_set):
        return elsewhere
    floor, hub = rear_end(bike), axle_set.over_locknut_mm
    narrower = standards.limit("closed_narrower_mm")
    carbon = bike.frame_material == "carbon"
    values = {"narrower_mm": short_by_mm(floor, hub), "wider_mm": short_by_mm(hub, floor)}
    return Check(
        reading=floor - hub,
        unit="mm",
        low=of_row(narrower, -narrower.value),
        high=of_row(standards.limit("closed_wider_carbon_mm" if carbon else "closed_wider_mm")),
        values={**values, "may_be_narrower_mm": narrower.value},
    )
