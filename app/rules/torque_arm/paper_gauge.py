"""What a paper gauge told that was held along the left chainstay: whether the clamp finds a free stretch."""

from __future__ import annotations

from app.catalogue.hub_parts import TorqueArm
from app.catalogue.provenance import Provenance
from app.facts.bike import Bike
from app.facts.truth import Truth
from app.rules.brake.paper_gauge import GAUGE, NOT_HELD, NOT_KNOWN
from app.rules.check import Check, Inapplicable
from app.rules.outcome import Weight
from app.rules.rule import Says, rule
from app.rules.torque_arm.applies import clamp_gauge_tells, no_clamp


@rule(
    title="The clamp on the paper gauge reaches a free stretch of the stay",
    weight=Weight.BLOCKS,
    applies="Where the arm is clamped and its gauge, as it is now, was held on the bike.",
    expects="Between the marks of its reach the stay is free all around over the length of the clamp.",
    assumes="The sheet was printed at 100 % and its bar measured. Where the gauge told, "
    "what was measured along the stay doesn't count beside it.",
    source=GAUGE,
    settled_by=("gauge_clamp_reaches",),
    says=Says(
        passed="Held on the bike, the gauge's clamp reaches a free stretch of the stay.",
        failed="Held on the bike, the gauge's clamp finds no stretch of the stay that is free.",
        not_known=NOT_KNOWN,
        remedy="Move the hose or the cable if that frees the stay; "
        "otherwise take an arm with another reach or a shorter clamp.",
    ),
)
def gauge_clamp(bike: Bike, torque_arm: TorqueArm) -> Check | Inapplicable:
    if elsewhere := no_clamp(torque_arm):
        return elsewhere
    if not clamp_gauge_tells(bike, torque_arm):
        return NOT_HELD
    return Check.of_truth(Truth.of(yes=bike.gauge_clamp_reaches == "yes"), Provenance.MEASURED)
