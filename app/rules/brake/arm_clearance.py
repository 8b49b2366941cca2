"""Whether the torque arm clears the brake caliper: the collision that ends most conversions."""

from __future__ import annotations

from app.catalogue.hub_parts import TorqueArm
from app.catalogue.standards import Standards
from app.facts.bike import Bike
from app.facts.span import Span
from app.mechanics.arm_beside_caliper import Clearance, Measure, clearance, spare
from app.mechanics.arm_outline import index_angles, measures_of
from app.mechanics.prism_gap import prism
from app.rules.brake.applies import measured_arm, no_bar
from app.rules.brake.caliper_readings import (
    FAR_POINT,
    MOUNT,
    NEAR_POINT,
    near_readings,
    tables_of,
    whole_readings,
)
from app.rules.check import Check, Inapplicable, Limit, habit, of_part, touching
from app.rules.outcome import Weight
from app.rules.rule import PART_DATA, PRACTICE, Says, Source, rule

NOTHING_WANTED = Inapplicable("The maker of this arm asks for no more than that it doesn't touch.")

IN_PLANE, ALONG_AXLE, NOTHING_SPARE = habit(2), habit(1), habit(0)

APPLIES = "Where a disc brake stays and the arm has a bar along the left chainstay."
ASSUMES = (
    "The arm sits at the angle that clears best. On IS and post mounts the caliper is where their published "
    "lengths and the line of its bolts put it, and no larger than such calipers are; on a flat mount it lies "
    "beyond its nearest point and between that and its far end. It is as deep everywhere as at its deepest."
)
GEOMETRY = Source("Geometry", "the gap of two prisms, from mount, rotor and readings")
SETTLED_BY = ("rear_brake", *MOUNT, *NEAR_POINT, *FAR_POINT)
GAUGE = "gauge_arm_clears"
NOT_KNOWN = (
    "Look how the caliper is bolted on and measure the line of its bolts; or measure its nearest point, "
    "its far end, how far out it reaches, and the rotor's distance from the dropout."
)
REMEDY = (
    "Take an arm with a smaller disc, a narrower bar, a crank in it or a thinner plate; "
    "or move the caliper away with a larger rotor and its adapter, and measure again."
)
PASSED = "Gap between arm and caliper: {reading}, the arm at {index_deg} to the stay. "


def _clear(bike: Bike, torque_arm: TorqueArm, standards: Standards, measure: Measure = prism) -> Clearance:
    """The whole caliper beside the arm, at one angle."""
    return clearance(
        measures_of(torque_arm), index_angles(torque_arm), whole_readings(bike), tables_of(standards), measure
    )


def _check(found: Clearance, low: Limit) -> Check:
    return Check(reading=found.gap_mm, unit="mm", low=low, values={"index_deg": _turned(found)})


def _turned(found: Clearance) -> Span:
    return Span.exactly(str(found.index_deg))


@rule(
    title="The torque arm clears the caliper",
    weight=Weight.BLOCKS,
    version=3,
    applies=APPLIES,
    expects="Arm and the near side of the caliper are apart, seen from the side or along the axle.",
    assumes=ASSUMES,
    source=GEOMETRY,
    settled_by=("rear_brake", *MOUNT, *NEAR_POINT, GAUGE),
    says=Says(
        passed=PASSED + "At worst {margin} in hand.",
        failed="Gap between arm and caliper: {reading}. At best they overlap by {margin}.",
        not_known=NOT_KNOWN,
        remedy=REMEDY,
    ),
)
def arm_caliper(bike: Bike, torque_arm: TorqueArm, standards: Standards) -> Check | Inapplicable:
    if elsewhere := measured_arm(bike, torque_arm):
        return elsewhere
    arm, angles = measures_of(torque_arm), index_angles(torque_arm)
    return _check(clearance(arm, angles, near_readings(bike), tables_of(standards)), touching())


@rule(
    title="The torque arm clears the far end of the caliper",
    weight=Weight.BLOCKS,
    version=3,
    applies=APPLIES,
    expects="At one angle the arm is apart from the whole caliper, its far end with it.",
    assumes=ASSUMES,
    source=GEOMETRY,
    settled_by=(*SETTLED_BY, GAUGE),
    says=Says(
        passed=PASSED + "At worst {margin} in hand.",
        failed="Gap between arm and caliper, its far end with it: {reading}. "
        "At best they overlap by {margin}.",
        not_known=NOT_KNOWN,
        remedy=REMEDY,
    ),
)
def arm_caliper_far(bike: Bike, torque_arm: TorqueArm, standards: Standards) -> Check | Inapplicable:
    if elsewhere := measured_arm(bike, torque_arm):
        return elsewhere
    return _check(_clear(bike, torque_arm, standards), touching())


@rule(
    title="The arm has the clearance that its maker wants",
    weight=Weight.BLOCKS,
    version=3,
    applies="Where a disc brake stays, the arm has a bar along the stay, and its maker wants a clearance.",
    expects="Arm and caliper are as far apart as the arm's maker wants.",
    assumes=ASSUMES,
    source=PART_DATA,
    settled_by=(*SETTLED_BY, GAUGE),
    says=Says(
        passed=PASSED + "The maker wants {low}. At worst {margin} in hand.",
        failed="Gap between arm and caliper: {reading}; the maker wants {low}. At best {margin} too little.",
        not_known=NOT_KNOWN,
        remedy=REMEDY,
    ),
)
def arm_caliper_wanted(bike: Bike, torque_arm: TorqueArm, standards: Standards) -> Check | Inapplicable:
    if elsewhere := measured_arm(bike, torque_arm):
        return elsewhere
    if torque_arm.clearance_mm is None:
        return NOTHING_WANTED
    return _check(_clear(bike, torque_arm, standards), of_part(torque_arm.clearance_mm))


@rule(
    title="Arm and caliper have room to move",
    weight=Weight.CAUTIONS,
    version=2,
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
def arm_caliper_running(bike: Bike, torque_arm: TorqueArm, standards: Standards) -> Check | Inapplicable:
    if elsewhere := no_bar(bike, torque_arm):
        return elsewhere
    found = _clear(bike, torque_arm, standards, spare)
    values = {"plane_gap_mm": found.plane_mm, "axial_gap_mm": found.axial_mm, "index_deg": _turned(found)}
    return Check(reading=found.gap_mm, unit="mm", low=NOTHING_SPARE, values=values)
