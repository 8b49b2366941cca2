"""Whether the frame may carry the converted bike with its rider and load."""

from __future__ import annotations

from app.catalogue.hub_parts import Hub
from app.catalogue.provenance import Provenance
from app.facts.bike import Bike, Wish
from app.rules.check import Check, Inapplicable, Limit
from app.rules.outcome import Weight
from app.rules.rule import Says, Source, rule


@rule(
    title="The frame may carry bike, rider and load",
    weight=Weight.CAUTIONS,
    applies="Where the hub goes with the bike's drivetrain, and so onto this frame.",
    expects="Bike, kit, rider and load together weigh no more than the frame's maker permits.",
    assumes="The total mass counts the kit; the frame is undamaged.",
    source=Source("The frame maker's permissible mass", "sticker or owner's manual"),
    settled_by=("total_mass_kg", "permissible_mass_kg", "drivetrain"),
    says=Says(
        passed="Bike, kit, rider and load weigh {reading}; this frame may weigh {high} in all. "
        "At worst {margin} in hand.",
        failed="Bike, kit, rider and load weigh {reading}; this frame may weigh {high} in all. "
        "At best {margin} too much.",
        not_known="Read the permissible mass off the frame or its manual, and weigh rider and load.",
        remedy="Carry less, or ask the frame's maker: the permissible mass counts the kit too.",
    ),
)
def permissible_mass(bike: Bike, wish: Wish, hub: Hub) -> Check | Inapplicable:
    """No dealer can see a frame's reserve from outside, so its maker's number is the only one."""
    if bike.drivetrain not in hub.drivetrains:
        return Inapplicable(
            "This hub doesn't go with the bike's drivetrain, so nothing is put on this frame."
        )
    limit = Limit(bike.permissible_mass_kg, Provenance.MEASURED)
    return Check(reading=wish.total_mass_kg, unit="kg", high=limit)
