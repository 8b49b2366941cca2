"""Whether the caliper was measured where its mount puts it: both are believed, and must agree."""

from __future__ import annotations

from app.catalogue.provenance import Provenance
from app.catalogue.standards import Standards
from app.facts.bike import Bike
from app.facts.span import Span
from app.mechanics.caliper_envelope import off_mount
from app.rules.brake.applies import no_disc
from app.rules.brake.caliper_readings import NEAR_POINT, place_readings, tables_of
from app.rules.check import Check, Inapplicable, Limit
from app.rules.outcome import Weight
from app.rules.rule import Says, Source, rule

FLAT = Inapplicable("Nobody published where a flat mount has its caliper.")

OFF = Limit(Span.exactly(3), Provenance.ESTIMATE, source="Estimate: no ear or boss is larger by more")


@rule(
    title="The caliper was measured where its mount puts it",
    weight=Weight.CAUTIONS,
    applies="Where a disc brake's caliper is on an IS or post mount.",
    expects="The nearest point is at most 3 mm off the place that mount, rotor and bolt line give it.",
    assumes="The mount is made to its published lengths.",
    source=Source("Published lengths of the mounts"),
    settled_by=(
        "rear_brake",
        "caliper_mount",
        "caliper_adapter",
        "rotor_diameter_mm",
        "caliper_line_bearing_deg",
        *NEAR_POINT,
    ),
    limits=(OFF,),
    says=Says(
        passed="The nearest point lies {reading} outside of where the mount has its caliper.",
        failed="The nearest point lies {reading} outside of where the mount has its caliper. "
        "At best {margin} too far.",
        not_known="Measure the line of the caliper's bolts, and the distance and direction "
        "of its nearest point.",
        remedy="Measure the nearest point and the line of the bolts again, and look again at mount, "
        "adapter and rotor: until they agree, a gap beside the caliper is not to be relied on.",
    ),
)
def caliper_as_mounted(bike: Bike, standards: Standards) -> Check | Inapplicable:
    if elsewhere := no_disc(bike):
        return elsewhere
    if bike.caliper_mount == "flat":
        return FLAT
    return Check(reading=off_mount(place_readings(bike), tables_of(standards)), unit="mm", high=OFF)
