"""Whether the chain runs straight onto the new wheel's cogs, and is good enough to run on them."""

from __future__ import annotations

from app.catalogue.hub_parts import AxleSet
from app.catalogue.provenance import Provenance
from app.catalogue.standards import Standards
from app.facts.bike import Bike
from app.facts.span import Span
from app.mechanics.cassette import chain_limit_pct
from app.rules.check import Check, Inapplicable, Limit, Missing, habit
from app.rules.drivetrain.applies import DRIVE_IN_THE_HUB, label
from app.rules.outcome import Weight
from app.rules.rule import PRACTICE, Says, Source, rule

DERAILLEUR_OFF_MM = habit(2)
SINGLE_COG_OFF_MM = habit(1)

# What a gauge says: which of its ends drops in. No chain in use is worn by more than 2 %.
WEAR_PCT = {
    "below_0_5": Span.between(0, "0.499"),
    "from_0_5_to_0_75": Span.between("0.5", "0.749"),
    "above_0_75": Span.between("0.75", 2),
}


@rule(
    title="The chainrings line up with the cogs",
    weight=Weight.CAUTIONS,
    applies="Where a chain drives cogs on the hub.",
    expects="The middle of the chainrings is at most 2 mm off the middle of the cogs; with one cog, 1 mm.",
    assumes="No washer is moved from one side of the axle to the other.",
    source=PRACTICE,
    settled_by=("drivetrain", "chainline_mm"),
    limits=(DERAILLEUR_OFF_MM, SINGLE_COG_OFF_MM),
    says=Says(
        passed="The chainrings stand {reading} off the middle of the cogs, which is at {rear_chainline_mm}; "
        "up to {high} runs well. At worst {margin} in hand.",
        failed="The chainrings stand {reading} off the middle of the cogs, which is at {rear_chainline_mm}; "
        "up to {high} runs well.",
        not_known="Measure the chainline: middle of the frame to the middle of the chainrings.",
        remedy="Move the chainrings by the length of the bottom bracket's axle or with spacers, "
        "or move washers on the hub's axle and dish the wheel again.",
    ),
)
def chainline(bike: Bike, axle_set: AxleSet) -> Check | Inapplicable | Missing:
    """Off to either side is alike."""
    if bike.drivetrain not in {"derailleur", "single_speed"}:
        return DRIVE_IN_THE_HUB
    rear = axle_set.rear_chainline_mm
    if rear is None:
        return Missing(axle_set, "rear_chainline_mm")
    return Check(
        reading=abs(bike.chainline_mm - rear),
        unit="mm",
        high=SINGLE_COG_OFF_MM if bike.drivetrain == "single_speed" else DERAILLEUR_OFF_MM,
        values={"rear_chainline_mm": rear},
    )


@rule(
    title="The chain is good enough for the new wheel",
    weight=Weight.CAUTIONS,
    applies="Where the bike has a chain.",
    expects="The chain is worn less than 0.75 % with up to 10 cogs, and less than 0.5 % from 11.",
    assumes="The gauge was used on the lower run, and no cog or chainring is hooked.",
    source=Source("How to check chain wear", "bikevitals.com/blog/how-to-check-chain-wear"),
    settled_by=("drivetrain", "cassette_speeds", "chain_wear"),
    says=Says(
        passed="Chain wear: {wear}. With so many cogs a chain is changed at {change_at_pct}.",
        failed="Chain wear: {wear}. With so many cogs a chain is changed at {change_at_pct}.",
        not_known="Put a wear gauge into the lower run of the chain.",
        remedy="Fit a new chain with the wheel, and look at the cassette: worn cogs skip under a new chain. "
        "The motor doesn't pull on the chain, the rider does.",
    ),
)
def chain_wear(bike: Bike, standards: Standards) -> Check | Inapplicable:
    """An end of the gauge that drops in has found the wear it is made for."""
    if bike.drivetrain == "belt":
        return Inapplicable("The bike has a belt, no chain.")
    limit = chain_limit_pct(bike.cassette_speeds, standards.chain_wear)
    return Check(
        reading=WEAR_PCT[bike.chain_wear],
        unit="%",
        high=Limit(limit, Provenance.PUBLISHED, excluded=True),
        values={"wear": label("chain_wear", bike.chain_wear).lower(), "change_at_pct": limit},
    )
