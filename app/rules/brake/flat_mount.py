"""What a caliper that is bolted onto the chainstay itself leaves of the stay."""

from __future__ import annotations

from app.catalogue.provenance import Provenance
from app.facts.bike import Bike
from app.mechanics.mounts import flat_ends_mm
from app.rules.brake.applies import no_disc
from app.rules.check import Check, Inapplicable, Limit
from app.rules.outcome import Weight
from app.rules.rule import PRACTICE, Says, rule

NOT_FLAT = Inapplicable("The caliper is not on a flat mount.")

ESTIMATE = "Estimate: the far bolt for this rotor, and 15 mm, as near as such frames have it"


@rule(
    title="The free stretch begins beyond the flat-mount caliper",
    weight=Weight.CAUTIONS,
    version=2,
    applies="Where the caliper of a disc brake is on a flat mount, and so lies on the chainstay.",
    expects="The stay is free from no nearer than where such a caliper ends at the least, for its rotor.",
    assumes="The frame's flat mount is like most: no published table gives its place.",
    source=PRACTICE,
    settled_by=("rear_brake", "caliper_mount", "rotor_diameter_mm", "stay_clear_from_mm"),
    says=Says(
        passed="The stay is free from {reading}; a flat-mount caliper for this rotor "
        "ends {low} from the axle or further out.",
        failed="The stay is said to be free from {reading}; a flat-mount caliper for this rotor "
        "ends {low} from the axle or further out.",
        not_known="Read the rotor's size, and measure where the stay is free of caliper and hose.",
        remedy="Measure again where caliper, bolts and hose end. The clamp never pinches the hose.",
    ),
)
def flat_mount_free_stay(bike: Bike) -> Check | Inapplicable:
    if elsewhere := no_disc(bike):
        return elsewhere
    if bike.caliper_mount != "flat":
        return NOT_FLAT
    ends_at = Limit(flat_ends_mm(bike.rotor_diameter_mm), Provenance.ESTIMATE, source=ESTIMATE)
    return Check(reading=bike.stay_clear_from_mm, unit="mm", low=ends_at)
