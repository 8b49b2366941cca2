"""Whether chain, cassette and gears go on with the motor wheel."""

from app.rules.drivetrain.body import cassette_interface, cassette_spacer, cassette_speeds
from app.rules.drivetrain.chain import chain_wear, chainline
from app.rules.drivetrain.cogs import largest_cog, smallest_cog
from app.rules.drivetrain.kind import drivetrain_kind, single_cog
from app.rules.rule import Rule

RULES: tuple[Rule, ...] = (
    drivetrain_kind,
    single_cog,
    cassette_interface,
    cassette_speeds,
    cassette_spacer,
    smallest_cog,
    largest_cog,
    chainline,
    chain_wear,
)
