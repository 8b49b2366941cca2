"""What a paper gauge told that was held beside the brake caliper: of the arm, and of the motor's shell."""

from __future__ import annotations

from app.catalogue.hub_parts import AxleSet, Hub, TorqueArm
from app.catalogue.provenance import Provenance
from app.facts.bike import Bike
from app.facts.truth import Truth
from app.rules.axle.applies import another_kind
from app.rules.brake.applies import arm_gauge_tells, no_bar, no_disc, shell_gauge_tells
from app.rules.check import Check, Inapplicable
from app.rules.outcome import Weight
from app.rules.rule import Says, Source, rule

NOT_HELD = Inapplicable("No paper gauge of these parts, as they are now, has told anything on this bike.")

GAUGE = Source("The paper gauge", "drawn from the part's own outline, held on the bike")
ASSUMES = (
    "The sheet was printed at 100 % and its bar measured. Clear means clear by what the maker wants and by "
    "1 mm for the paper. Where the gauge told, what was measured with rule and level doesn't count beside it."
)
NOT_KNOWN = "Hold the paper gauge on the bike again, wheel out."


@rule(
    title="The paper gauge of the arm clears the caliper",
    weight=Weight.BLOCKS,
    applies="Where a disc brake stays and the gauge of this arm, as it is now, was held on the bike.",
    expects="At an angle of the arm, the gauge meets nothing of the caliper.",
    assumes=ASSUMES,
    source=GAUGE,
    settled_by=("rear_brake", "gauge_arm_clears"),
    says=Says(
        passed="Held on the bike, the arm's paper gauge clears the caliper.",
        failed="Held on the bike, the arm's paper gauge touches the caliper.",
        not_known=NOT_KNOWN,
        remedy="Take an arm with a smaller disc, a narrower bar or a crank in it, "
        "or move the caliper away with a larger rotor and its adapter.",
    ),
)
def gauge_arm(bike: Bike, torque_arm: TorqueArm) -> Check | Inapplicable:
    if elsewhere := no_bar(bike, torque_arm):
        return elsewhere
    if not arm_gauge_tells(bike, torque_arm):
        return NOT_HELD
    return Check.of_truth(Truth.of(yes=bike.gauge_arm_clears == "yes"), Provenance.MEASURED)


@rule(
    title="The paper gauge of the shell clears the caliper",
    weight=Weight.BLOCKS,
    applies="Where a disc brake stays and the gauge of this shell, as it is now, was held on the bike.",
    expects="The caliper's inner half is outside the shell's edge, or ends before the shell begins.",
    assumes=ASSUMES,
    source=GAUGE,
    settled_by=("rear_brake", "dropout_kind", "gauge_shell_clears"),
    says=Says(
        passed="Held on the bike, the shell's paper gauge clears the caliper.",
        failed="Held on the bike, the shell's paper gauge touches the caliper.",
        not_known=NOT_KNOWN,
        remedy="Take an axle set that puts the shell further in, a slimmer caliper, "
        "or a larger rotor and its adapter.",
    ),
)
def gauge_shell(bike: Bike, hub: Hub, axle_set: AxleSet) -> Check | Inapplicable:
    if elsewhere := no_disc(bike) or another_kind(bike, axle_set):
        return elsewhere
    if not shell_gauge_tells(bike, hub, axle_set):
        return NOT_HELD
    return Check.of_truth(Truth.of(yes=bike.gauge_shell_clears == "yes"), Provenance.MEASURED)
