"""Whether the chain is good enough to run on the new wheel's cogs."""

from __future__ import annotations

from app.catalogue.provenance import Provenance
from app.catalogue.standards import Standards
from app.facts.bike import Bike
from app.facts.span import Span
from app.mechanics.cassette import chain_limit_pct
from app.rules.check import Check, Inapplicable, Limit
from app.rules.drivetrain.applies import label
from app.rules.outcome import Weight
from app.rules.rule import Says, Source, rule

# What a gauge says: which of its ends drops in. No chain in use is worn by more than 2 %.
WEAR_PCT = {
    "below_0_5": Span.between(0, "0.499"),
    "from_0_5_to_0_75": Span.between("0.5", "0.749"),
    "above_0_75": Span.between("0.75", 2),
}


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
