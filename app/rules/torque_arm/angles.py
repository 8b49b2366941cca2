"""Whether the arm and its clamp swivel far enough for the stay: seen from the side, from above, and level."""

from __future__ import annotations

from app.catalogue.arm_steps import offsets_taken
from app.catalogue.hub_parts import AxleSet, TorqueArm
from app.catalogue.provenance import Provenance
from app.catalogue.standards import Standards
from app.facts.bike import Bike
from app.mechanics.arm_reach import bar_bearing, stay_beside_clamp
from app.mechanics.clamp import clamp_of
from app.mechanics.placement import inward_per_mm
from app.mechanics.stays import toe_in_deg
from app.rules.check import Check, Inapplicable, Limit, Missing, of_part
from app.rules.outcome import Weight
from app.rules.rule import PART_DATA, Says, rule
from app.rules.torque_arm.applies import STANDS_ANYHOW, free_axle, no_clamp, not_turning, turning

STRAIGHT_STAY = "The stay is straight from the axle to the clamp, seen from the side."
ON_FLATS = "Along the stay: {reading} to level, plus is up; the flats hold the bar at {low} to {high}. "


@rule(
    title="The clamp's reach takes the stay's height beside the axle",
    weight=Weight.BLOCKS,
    applies="Where a clamped arm sits on the axle at steps and its clamp reaches to the side.",
    expects="The stay's centre line passes the axle no further above or below than steps and clamp reach.",
    assumes=STRAIGHT_STAY,
    source=PART_DATA,
    version=2,
    settled_by=("stay_offset_mm",),
    says=Says(
        passed="Stay off the axle by {reading}, plus is above; the arm takes {low} to {high}. "
        "At worst {margin} in hand.",
        failed="Stay off the axle by {reading}, plus is above; the arm takes {low} to {high}. "
        "At best {margin} too low.",
        failed_high="Stay off the axle by {reading}, plus is above; the arm takes {low} to {high}. "
        "At best {margin} too high.",
        not_known="Measure how far the stay's centre line passes above or below the axle.",
        remedy="Take an arm that turns on the axle, or one with more steps.",
    ),
)
def clamp_offset(bike: Bike, torque_arm: TorqueArm) -> Check | Inapplicable | Missing:
    if elsewhere := turning(torque_arm):
        return elsewhere
    taken = offsets_taken(torque_arm)
    if taken is None:
        return Missing(torque_arm, "offset_low_mm")
    return Check(reading=bike.stay_offset_mm, unit="mm", low=of_part(taken[0]), high=of_part(taken[1]))


@rule(
    title="The bar points at the stay and the clamp lies along it",
    weight=Weight.BLOCKS,
    applies="Where a clamped arm turns on the axle until its bar points at the stay.",
    expects="The bar points no further up or down than the arm turns and its clamp swivels.",
    assumes=f"{STRAIGHT_STAY} The clamp sits where that angle suits it best.",
    source=PART_DATA,
    settled_by=("stay_offset_mm",),
    says=Says(
        passed="From the stay up to the bar {reading}; arm and clamp swivel from {low} to {high}. "
        "At worst {margin} in hand.",
        failed="From the stay up to the bar {reading}; arm and clamp swivel from {low} to {high}. "
        "At best {margin} too far down.",
        failed_high="From the stay up to the bar {reading}; arm and clamp swivel from {low} to {high}. "
        "At best {margin} too far up.",
        not_known="Measure how far the stay's centre line passes above or below the axle.",
        remedy="Take an arm that swivels further, or a longer one.",
    ),
)
def clamp_swivel(bike: Bike, torque_arm: TorqueArm) -> Check | Inapplicable | Missing:
    if elsewhere := not_turning(torque_arm):
        return elsewhere
    clamp = clamp_of(torque_arm)
    if torque_arm.swivel_in_plane_deg is None or clamp.bearing_deg is None:
        return Missing(torque_arm, "swivel_in_plane_deg")
    low, high = clamp.bearing_deg
    bearing = bar_bearing(clamp, clamp.bearing_deg, bike.stay_offset_mm)
    return Check(reading=bearing, unit="°", low=of_part(low), high=of_part(high))


@rule(
    title="The clamp takes the stay's place beside the dropout",
    weight=Weight.BLOCKS,
    applies="Where the arm is clamped to the left chainstay.",
    expects="At the clamp the stay's centre lies inboard of the dropout's inner face as far as it takes.",
    assumes="The stay was measured a hand's width in front of the axle and runs straight to the cranks.",
    source=PART_DATA,
    version=2,
    settled_by=("stay_lateral_mm", "chainstay_length_mm"),
    says=Says(
        passed="At the clamp the stay is {reading} off the dropout's inner face, plus is inboard; "
        "the arm takes {low} to {high}. At worst {margin} in hand.",
        failed="At the clamp the stay is {reading} off the dropout's inner face, plus is inboard; "
        "the arm takes {low} to {high}. At best {margin} too far out.",
        failed_high="At the clamp the stay is {reading} off the dropout's inner face, plus is inboard; "
        "the arm takes {low} to {high}. At best {margin} too far in.",
        not_known="Measure from the dropout's inner face to the stay's centre, and the chainstay's length.",
        remedy="Take an arm whose clamp reaches further to the side.",
    ),
)
def clamp_lateral(bike: Bike, torque_arm: TorqueArm, standards: Standards) -> Check | Inapplicable | Missing:
    if elsewhere := no_clamp(torque_arm):
        return elsewhere
    clamp = clamp_of(torque_arm)
    if clamp.lateral_mm is None:
        return Missing(torque_arm, "lateral_low_mm")
    low, high = clamp.lateral_mm
    beside = stay_beside_clamp(
        clamp,
        clamp.lateral_mm,
        lateral_mm=bike.stay_lateral_mm,
        inward_per_mm=inward_per_mm(bike.chainstay_length_mm, standards),
        read_at_mm=standards.limit("stay_read_at_mm").value,
    )
    return Check(reading=beside, unit="mm", low=of_part(low), high=of_part(high))


@rule(
    title="The clamp swivels as far as the stay turns inward",
    weight=Weight.CAUTIONS,
    applies="Where the arm is clamped to the left chainstay.",
    expects="Seen from above, the clamp swivels against the bar as far as the stay turns towards the cranks.",
    assumes="From axle to cranks a chainstay comes 12 to 45 mm nearer to the middle, as rear ends are built.",
    source=PART_DATA,
    settled_by=("chainstay_length_mm",),
    says=Says(
        passed="The stay turns inward by {reading}; the clamp swivels {high}. At worst {margin} in hand.",
        failed="The stay turns inward by {reading}; the clamp swivels {high}. At best {margin} too much.",
        not_known="Measure the chainstay's length.",
        remedy="Line the clamp so that it closes askew, or take one that swivels further seen from above.",
    ),
)
def clamp_swivel_across(
    bike: Bike, torque_arm: TorqueArm, standards: Standards
) -> Check | Inapplicable | Missing:
    if elsewhere := no_clamp(torque_arm):
        return elsewhere
    if torque_arm.swivel_across_deg is None:
        return Missing(torque_arm, "swivel_across_deg")
    draws_in = standards.limit("stay_draws_in_mm")
    return Check(
        reading=toe_in_deg(draws_in_mm=draws_in.value, length_mm=bike.chainstay_length_mm),
        unit="°",
        high=Limit(torque_arm.swivel_across_deg, Provenance.ESTIMATE),
    )


@rule(
    title="On the flats of the axle the arm lies along the stay",
    weight=Weight.BLOCKS,
    applies="Where flats of the axle in the slot decide how a clamped arm stands.",
    expects="The stay falls or rises no further from level than the arm turns on the flats.",
    assumes="The slot is level or upright, and the bar lies along the stay.",
    source=PART_DATA,
    settled_by=("stay_angle_deg",),
    says=Says(
        passed=ON_FLATS + "At worst {margin} in hand.",
        failed=ON_FLATS + "At best {margin} too low.",
        failed_high=ON_FLATS + "At best {margin} too high.",
        not_known="Measure how steep the left chainstay is, the bike standing level.",
        remedy="Take an arm that goes on the flats at more angles.",
    ),
)
def arm_on_flats(bike: Bike, axle_set: AxleSet, torque_arm: TorqueArm) -> Check | Inapplicable:
    if elsewhere := no_clamp(torque_arm) or free_axle(axle_set):
        return elsewhere
    low, high = torque_arm.level_from_deg, torque_arm.level_to_deg
    if low is None or high is None:
        return STANDS_ANYHOW
    return Check(reading=-bike.stay_angle_deg, unit="°", low=of_part(low), high=of_part(high))
