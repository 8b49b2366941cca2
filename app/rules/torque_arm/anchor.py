"""Whether what holds the arm may hold it: a stay that bears a clamp, or a brake mount that nothing uses."""

from __future__ import annotations

from app.catalogue.hub_parts import TorqueArm
from app.catalogue.standards import Standards
from app.facts.bike import Bike
from app.facts.truth import Truth
from app.rules.check import Check, Inapplicable
from app.rules.outcome import Weight
from app.rules.rule import PART_DATA, Says, Source, rule
from app.rules.torque_arm.applies import NO_BOLT, no_clamp

MOUNTS = ("is", "post")


@rule(
    title="The stay's material bears a clamp",
    weight=Weight.BLOCKS,
    applies="Where the arm is clamped to the left chainstay.",
    expects="The stay is of steel, aluminium or titanium.",
    assumes="The stay's wall is sound, and the clamp sits on no weld.",
    source=Source("Bicycle owner's manuals on carbon", "manualshive.com (845753 p. 57; 4118531 p. 103)"),
    settled_by=("stay_material",),
    says=Says(
        passed="A clamp may go on a stay of this material.",
        failed="A clamp can crush or crack a stay of this material.",
        not_known="Find out what the left chainstay is made of; a magnet tells steel.",
        remedy="Take an arm that is held by an unused brake mount. "
        "On carbon and magnesium no clamp of any kind holds a motor's torque.",
    ),
)
def no_clamp_on_carbon(bike: Bike, torque_arm: TorqueArm, standards: Standards) -> Check | Inapplicable:
    """Carbon and magnesium never; a material that the trade has no word for is a caution."""
    if elsewhere := no_clamp(torque_arm):
        return elsewhere
    row = standards.material(bike.stay_material)
    return Check.of_truth(Truth.of(yes=row.stay_clamp == "yes"), row.provenance_of("stay_clamp"))


@rule(
    title="The brake mount that holds the arm is free",
    weight=Weight.BLOCKS,
    applies="Where the arm is bolted to a brake mount.",
    expects="The frame has an IS or a post mount, and no caliper is on it.",
    assumes="The mount is part of the frame, and its threads are sound.",
    source=PART_DATA,
    settled_by=("rear_brake", "caliper_mount"),
    says=Says(
        passed="The arm is bolted to the frame's unused brake mount.",
        failed="There is no unused IS or post mount for this arm.",
        not_known="Look whether the frame has an IS or a post mount, and what is on it.",
        remedy="Take an arm that is clamped to the stay.",
    ),
)
def mount_free(bike: Bike, torque_arm: TorqueArm) -> Check | Inapplicable:
    if torque_arm.anchor != "mount_bolt":
        return NO_BOLT
    free = bike.rear_brake != "disc" and bike.caliper_mount in MOUNTS
    return Check.of_truth(Truth.of(yes=free))
