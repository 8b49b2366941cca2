"""Whether the torque arm clears the brake caliper: the collision that ends most conversions."""

from __future__ import annotations

from app.catalogue.hub_parts import TorqueArm
from app.facts.bike import Bike
from app.facts.span import Span
from app.mechanics.axial_stack import arm_to_caliper
from app.mechanics.caliper_clearance import bar_gap, plane_gap, prism_gap, spare
from app.rules.brake.applies import no_bar
from app.rules.check import Check, Inapplicable, habit, of_part, touching
from app.rules.outcome import Weight
from app.rules.rule import PART_DATA, PRACTICE, Says, Source, rule

NOTHING_WANTED = Inapplicable("The maker of this arm asks for no more than that it doesn't touch.")

IN_PLANE, ALONG_AXLE, NOTHING_SPARE = habit(2), habit(1), habit(0)

APPLIES = "Where a disc brake stays and the arm has a bar along the left chainstay."
ASSUMES = (
    "The bar lies straight along the stay. Caliper, adapter and bolts come no nearer to it "
    "than their nearest point and their far end do."
)
SETTLED_BY = (
    "rear_brake",
    "rotor_offset_mm",
    "caliper_nearest_mm",
    "caliper_bearing_deg",
    "caliper_outboard_depth_mm",
)
NOT_KNOWN = (
    "Measure the caliper's nearest point and its direction, how far the caliper reaches out, "
    "and the rotor's distance from the dropout."
)
REMEDY = (
    "Take an arm with a smaller disc, a narrower bar or a thinner plate; "
    "or move the caliper away with a larger rotor and its adapter, and measure again."
)


def _in_plane(bike: Bike, torque_arm: TorqueArm) -> Span:
    return plane_gap(
        nearest_mm=bike.caliper_nearest_mm,
        bearing_deg=bike.caliper_bearing_deg,
        disc_radius_mm=torque_arm.disc_radius_mm,
        half_width_mm=torque_arm.bar_half_width_mm,
        end_mm=torque_arm.reach_to_mm,
    )


def _along_axle(bike: Bike, torque_arm: TorqueArm) -> Span:
    return arm_to_caliper(
        rotor_offset_mm=bike.rotor_offset_mm,
        outboard_depth_mm=bike.caliper_outboard_depth_mm,
        inner_face_mm=torque_arm.inner_face_mm,
    )


def _gap(bike: Bike, torque_arm: TorqueArm) -> Span:
    return prism_gap(plane_mm=_in_plane(bike, torque_arm), axial_mm=_along_axle(bike, torque_arm))


@rule(
    title="The torque arm clears the caliper",
    weight=Weight.BLOCKS,
    applies=APPLIES,
    expects="Arm and caliper are apart, seen from the side or along the axle.",
    assumes=ASSUMES,
    source=Source("Geometry", "the gap of two prisms"),
    settled_by=SETTLED_BY,
    says=Says(
        passed="Gap between arm and caliper: {reading}. At worst {margin} in hand.",
        failed="Gap between arm and caliper: {reading}. At best they overlap by {margin}.",
        not_known=NOT_KNOWN,
        remedy=REMEDY,
    ),
)
def arm_caliper(bike: Bike, torque_arm: TorqueArm) -> Check | Inapplicable:
    if elsewhere := no_bar(bike, torque_arm):
        return elsewhere
    return Check(reading=_gap(bike, torque_arm), unit="mm", low=touching())


@rule(
    title="The torque arm clears the far end of the caliper",
    weight=Weight.BLOCKS,
    applies=APPLIES,
    expects="The arm's bar and the caliper's far end are apart, seen from the side or along the axle.",
    assumes=ASSUMES,
    source=Source("Geometry", "the gap of two prisms"),
    settled_by=(
        "rear_brake",
        "rotor_offset_mm",
        "caliper_far_mm",
        "caliper_far_bearing_deg",
        "caliper_outboard_depth_mm",
    ),
    says=Says(
        passed="Gap between arm and far end of the caliper: {reading}. At worst {margin} in hand.",
        failed="Gap between arm and far end of the caliper: {reading}. At best they overlap by {margin}.",
        not_known="Measure the far end of caliper or adapter and its direction, seen from the axle; "
        "within 5 mm and 5° is often close enough.",
        remedy=REMEDY,
    ),
)
def arm_caliper_far(bike: Bike, torque_arm: TorqueArm) -> Check | Inapplicable:
    """One point can't show a boss at the other end, near the stay."""
    if elsewhere := no_bar(bike, torque_arm):
        return elsewhere
    in_plane = bar_gap(
        distance_mm=bike.caliper_far_mm,
        bearing_deg=bike.caliper_far_bearing_deg,
        half_width_mm=torque_arm.bar_half_width_mm,
        end_mm=torque_arm.reach_to_mm,
    )
    gap = prism_gap(plane_mm=in_plane, axial_mm=_along_axle(bike, torque_arm))
    return Check(reading=gap, unit="mm", low=touching())


@rule(
    title="The arm has the clearance that its maker wants",
    weight=Weight.BLOCKS,
    applies="Where a disc brake stays, the arm has a bar along the stay, and its maker wants a clearance.",
    expects="Arm and caliper are as far apart as the arm's maker wants.",
    assumes=ASSUMES,
    source=PART_DATA,
    settled_by=SETTLED_BY,
    says=Says(
        passed="Gap between arm and caliper: {reading}; the maker wants {low}. At worst {margin} in hand.",
        failed="Gap between arm and caliper: {reading}; the maker wants {low}. At best {margin} too little.",
        not_known=NOT_KNOWN,
        remedy=REMEDY,
    ),
)
def arm_caliper_wanted(bike: Bike, torque_arm: TorqueArm) -> Check | Inapplicable:
    if elsewhere := no_bar(bike, torque_arm):
        return elsewhere
    if torque_arm.clearance_mm is None:
        return NOTHING_WANTED
    return Check(reading=_gap(bike, torque_arm), unit="mm", low=of_part(torque_arm.clearance_mm))


@rule(
    title="Arm and caliper have room to move",
    weight=Weight.CAUTIONS,
    applies=APPLIES,
    expects="Arm and caliper are 2 mm apart seen from the side, or 1 mm along the axle.",
    assumes=ASSUMES,
    source=PRACTICE,
    settled_by=SETTLED_BY,
    limits=(IN_PLANE, ALONG_AXLE),
    says=Says(
        passed="Gap from the side {plane_gap_mm}, along the axle {axial_gap_mm}, minus where they overlap; "
        "2 mm or 1 mm is room enough. At worst {margin} in hand.",
        failed="Gap from the side {plane_gap_mm}, along the axle {axial_gap_mm}, minus where they overlap; "
        "2 mm or 1 mm is wanted. At best {margin} too little.",
        not_known=NOT_KNOWN,
        remedy="Move the caliper or take a slimmer arm. If both stay, look for marks after the first ride.",
    ),
)
def arm_caliper_running(bike: Bike, torque_arm: TorqueArm) -> Check | Inapplicable:
    if elsewhere := no_bar(bike, torque_arm):
        return elsewhere
    plane, axial = _in_plane(bike, torque_arm), _along_axle(bike, torque_arm)
    room = spare(
        plane_mm=plane, axial_mm=axial, plane_wanted_mm=IN_PLANE.value, axial_wanted_mm=ALONG_AXLE.value
    )
    values = {"plane_gap_mm": plane, "axial_gap_mm": axial}
    return Check(reading=room, unit="mm", low=NOTHING_SPARE, values=values)
