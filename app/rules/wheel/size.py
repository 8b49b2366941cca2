"""Whether the wheel that the frame is made for is one that the hub may turn."""

from __future__ import annotations

from app.catalogue.catalogue import Catalogue
from app.catalogue.hub_parts import Hub
from app.facts.bike import Bike
from app.mechanics.chosen_parts import rim_of
from app.rules.check import Check, Inapplicable, Missing, of_part
from app.rules.outcome import Weight
from app.rules.rule import PART_DATA, Says, rule
from app.rules.wheel.applies import BARE_HUB, READY_LACED


@rule(
    title="The hub is made for wheels of this size",
    weight=Weight.BLOCKS,
    applies="Where the hub comes bare.",
    expects="The bead seat lies in the range of the hub's maker.",
    assumes="The bike keeps its wheel size.",
    source=PART_DATA,
    settled_by=("bead_seat_mm",),
    says=Says(
        passed="Bead seat {reading}; this hub goes into wheels of {low} to {high}. "
        "At worst {margin} in hand.",
        failed="Bead seat {reading}; this hub goes into wheels of {low} to {high}. "
        "At best {margin} too small.",
        failed_high="Bead seat {reading}; this hub goes into wheels of {low} to {high}. "
        "At best {margin} too large.",
        not_known="Read the second number of the size on the tyre, like 622 in 37-622.",
        remedy="Take a hub for smaller wheels.",
        remedy_high="Take a hub for larger wheels.",
    ),
)
def wheel_size(bike: Bike, hub: Hub) -> Check | Inapplicable:
    """Flange, winding and heat all go with the size of the wheel, so the maker says."""
    if hub.laced_into is not None:
        return READY_LACED
    return Check(
        reading=bike.bead_seat_mm,
        unit="mm",
        low=of_part(hub.bead_seat_smallest_mm),
        high=of_part(hub.bead_seat_largest_mm),
    )


@rule(
    title="The ready-laced wheel has the bike's size",
    weight=Weight.BLOCKS,
    applies="Where the hub comes laced into a rim.",
    expects="The rim's bead seat is the bike's. Names in inches are not enough: several share one name.",
    assumes="The bike keeps its wheel size.",
    source=PART_DATA,
    settled_by=("bead_seat_mm",),
    says=Says(
        passed="Bead seat {reading}; this wheel has {low}.",
        failed="Bead seat {reading}; this wheel has {low}, which is larger.",
        failed_high="Bead seat {reading}; this wheel has {low}, which is smaller.",
        not_known="Read the second number of the size on the tyre, like 622 in 37-622.",
        remedy="Take this hub in a wheel of the bike's size, or bare.",
    ),
)
def ready_wheel_size(bike: Bike, hub: Hub, stock: Catalogue) -> Check | Inapplicable | Missing:
    """A wheel of another size lifts or drops the bike, and its rim brake misses the rim."""
    if hub.laced_into is None:
        return BARE_HUB
    rim = rim_of(hub, stock.rims)
    if rim is None:
        return Missing(hub, "laced_into")
    size = of_part(rim.bead_seat_mm)
    return Check(reading=bike.bead_seat_mm, unit="mm", low=size, high=size)
