"""Whether the rotor's size suits the hub and the frame."""

from __future__ import annotations

from app.catalogue.hub_parts import Hub
from app.catalogue.provenance import Provenance
from app.facts.bike import Bike
from app.rules.brake.applies import no_disc, no_rotor
from app.rules.check import Check, Inapplicable, Limit, Missing, of_part
from app.rules.outcome import Weight
from app.rules.rule import PART_DATA, Says, Source, rule

OWN_SIZE = Inapplicable("The caliper sits on the frame's own mount, so the rotor has the frame's own size.")


@rule(
    title="The hub takes a rotor of this size",
    weight=Weight.BLOCKS,
    applies="Where a disc brake stays and the hub carries a rotor.",
    expects="The rotor is within the sizes that the hub's maker allows.",
    assumes="The rotor stays, with its caliper where it is.",
    source=PART_DATA,
    settled_by=("rear_brake", "rotor_diameter_mm"),
    says=Says(
        passed="Rotor {reading}; this hub takes {low} to {high}.",
        failed="Rotor {reading}; this hub takes {low} to {high}. At best {margin} too small.",
        failed_high="Rotor {reading}; this hub takes {low} to {high}. At best {margin} too large.",
        not_known="Read the size printed on the rotor.",
        remedy="Fit a larger rotor with the adapter for its caliper, as far as the frame allows.",
        remedy_high="Fit a smaller rotor with the adapter for its caliper; "
        "none goes below the size of the frame's own mount.",
    ),
)
def rotor_size(bike: Bike, hub: Hub) -> Check | Inapplicable | Missing:
    if elsewhere := no_rotor(bike, hub):
        return elsewhere
    if hub.rotor_smallest_mm is None:
        return Missing(hub, "rotor_smallest_mm")
    if hub.rotor_largest_mm is None:
        return Missing(hub, "rotor_largest_mm")
    return Check(
        reading=bike.rotor_diameter_mm,
        unit="mm",
        low=of_part(hub.rotor_smallest_mm),
        high=of_part(hub.rotor_largest_mm),
    )


@rule(
    title="The frame allows a rotor of this size",
    weight=Weight.BLOCKS,
    applies="Where an adapter makes the rotor of a disc brake larger than the frame's own mount does.",
    expects="The rotor is no larger than the frame's maker allows.",
    assumes="Without an adapter the rotor has the size that the mount was made for.",
    source=Source("The frame maker's own data"),
    settled_by=("rear_brake", "caliper_adapter", "rotor_diameter_mm", "frame_rotor_limit_mm"),
    says=Says(
        passed="Rotor {reading}; the frame's maker allows up to {high}.",
        failed="Rotor {reading}; the frame's maker allows up to {high}. At best {margin} too large.",
        not_known="Read the size printed on the rotor, and find the largest that the frame's maker allows.",
        remedy="Fit a smaller rotor with the adapter for its caliper.",
    ),
)
def frame_rotor_limit(bike: Bike) -> Check | Inapplicable:
    """A smaller rotor than the mount was made for does not exist, so that only an adapter can go too far."""
    if elsewhere := no_disc(bike):
        return elsewhere
    if bike.caliper_adapter == "none":
        return OWN_SIZE
    limit = Limit(bike.frame_rotor_limit_mm, Provenance.PUBLISHED, source="The frame's maker")
    return Check(reading=bike.rotor_diameter_mm, unit="mm", high=limit)
