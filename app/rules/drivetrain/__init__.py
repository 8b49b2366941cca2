"""Whether chain, cassette and gears go on with the motor wheel."""

from app.rules.drivetrain.body import cassette_interface, cassette_spacer, cassette_speeds
from app.rules.drivetrain.chain import chain_angle, chainline
from app.rules.drivetrain.chain_wear import chain_wear
from app.rules.drivetrain.cog_room import chain_beside_dropout, cog_beside_dropout
from app.rules.drivetrain.cogs import largest_cog, smallest_cog
from app.rules.drivetrain.cover_room import chain_beside_cover, cog_beside_cover
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
    cog_beside_dropout,
    chain_beside_dropout,
    cog_beside_cover,
    chain_beside_cover,
    chainline,
    chain_angle,
    chain_wear,
)
