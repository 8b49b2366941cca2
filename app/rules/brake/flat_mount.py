"""What a caliper that is bolted onto the chainstay itself leaves of the stay."""

from __future__ import annotations

from app.catalogue.provenance import Provenance
from app.facts.bike import Bike
from app.facts.span import Span
from app.rules.brake.applies import no_disc
from app.rules.check import Check, Inapplicable, Limit
from app.rules.outcome import Weight
from app.rules.rule import PRACTICE, Says, rule

NOT_FLAT = Inapplicable("The caliper is not on a flat mount.")

ENDS_AT = Limit(Span.exactly(85), Provenance.ESTIMATE, source="Estimate: far bolt and 15 mm, 85 to 105 mm")


@rule(
    title="The free stretch begins beyond the flat-mount caliper",
    weight=Weight.CAUTIONS,
    applies="Where the caliper of a disc brake is on a flat mount, and so lies on the chainstay.",
    expects="The stay is free from no less than 85 mm, where such a caliper usually ends.",
    assumes="The frame's flat mount is like most: no published table gives its place.",
    source=PRACTICE,
    settled_by=("rear_brake", "caliper_mount", "stay_clear_from_mm"),
    limits=(ENDS_AT,),
    says=Says(
        passed="The stay is free from {reading}; a flat-mount caliper usually ends "
        "85 to 105 mm from the axle.",
        failed="The stay is said to be free from {reading}; a flat-mount caliper usually reaches "
        "85 to 105 mm from the axle.",
        not_known="Measure where the stay is free of caliper and hose: on a flat mount "
        "that is usually 85 to 105 mm from the axle.",
        remedy="Measure again where caliper, bolts and hose end. The clamp never pinches the hose.",
    ),
)
def flat_mount_free_stay(bike: Bike) -> Check | Inapplicable:
    if elsewhere := no_disc(bike):
        return elsewhere
    if bike.caliper_mount != "flat":
        return NOT_FLAT
    return Check(reading=bike.stay_clear_from_mm, unit="mm", low=ENDS_AT)
