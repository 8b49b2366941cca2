"""Rear suspension: no torque arm may tie two parts of the frame together that move against each other."""

from __future__ import annotations

from app.catalogue.hub_parts import TorqueArm
from app.catalogue.provenance import Provenance
from app.facts.bike import Bike
from app.facts.truth import Truth
from app.rules.check import Check, Inapplicable
from app.rules.outcome import Weight
from app.rules.rule import Says, Source, rule


@rule(
    title="Axle and torque arm sit on one rigid member",
    weight=Weight.BLOCKS,
    applies="Where the frame has rear suspension.",
    expects="The stay or mount that the arm ends on is one rigid piece with the part that holds the axle.",
    assumes="The caliper's mount is one rigid piece with the stay that carries it.",
    source=Source("Two moving parts can't be tied together", "derived"),
    settled_by=("rear_suspension", "arm_member", "caliper_seat"),
    says=Says(
        passed="The arm ends on the member that carries the axle.",
        failed="The arm ends on a member that moves against the axle: it would tie the suspension up.",
        not_known="Follow the left chainstay from the axle and look for a joint that can turn.",
        remedy="Take an arm that ends on the member which carries the axle.",
    ),
)
def one_rigid_member(bike: Bike, torque_arm: TorqueArm) -> Check | Inapplicable:
    """An arm across a pivot works against the suspension at each stroke until something breaks."""
    if bike.rear_suspension == "none":
        return Inapplicable("The frame has no rear suspension.")
    if bike.rear_suspension == "one_piece":
        return Check.of_truth(Truth.YES, Provenance.DERIVED)
    chainstay_holds_axle = bike.arm_member == "yes"
    on_chainstay = torque_arm.anchor == "stay_clamp" or bike.caliper_seat == "chainstay"
    return Check.of_truth(Truth.of(yes=on_chainstay == chainstay_holds_axle), Provenance.DERIVED)
