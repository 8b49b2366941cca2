"""Whether the wheel may carry rider, bike and load."""

from __future__ import annotations

from app.catalogue.hub_parts import Hub
from app.facts.bike import Wish
from app.rules.check import Check, Inapplicable, Missing, of_part
from app.rules.outcome import Weight
from app.rules.rule import PART_DATA, Says, rule


@rule(
    title="The hub may carry bike, rider and load",
    weight=Weight.BLOCKS,
    applies="Where the hub's maker limits the mass itself, and doesn't leave that to the frame.",
    expects="Bike, kit, rider and load together weigh no more than the hub's maker allows.",
    assumes="The load is spread over both wheels as usual.",
    source=PART_DATA,
    settled_by=("total_mass_kg",),
    says=Says(
        passed="Bike, kit, rider and load weigh {reading}; this hub carries {high}. "
        "At worst {margin} in hand.",
        failed="Bike, kit, rider and load weigh {reading}; this hub carries {high}. "
        "At best {margin} too much.",
        not_known="Weigh rider and load, and add bike and kit.",
        remedy="Take a hub for a higher mass, or carry less.",
    ),
)
def total_load(wish: Wish, hub: Hub) -> Check | Inapplicable | Missing:
    """The maker's limit for axle, flanges and bearings together."""
    if hub.load_limit == "frame":
        return Inapplicable("This hub's maker leaves the load to the limit of the frame.")
    if hub.largest_total_mass_kg is None:
        return Missing(hub, "largest_total_mass_kg")
    return Check(reading=wish.total_mass_kg, unit="kg", high=of_part(hub.largest_total_mass_kg))
