"""When a rule about cogs does not concern the bike: its drive is not a cassette and a derailleur."""

from __future__ import annotations

from app.facts.bike import Bike
from app.facts.fact import ChoiceFact
from app.facts.table import FACTS
from app.rules.check import Inapplicable

SINGLE_COG = Inapplicable("A single cog is bought new, to suit the freehub body.")
DRIVE_IN_THE_HUB = Inapplicable("The bike's gears or its belt pulley sit on the hub that comes out.")


def no_cassette(bike: Bike) -> Inapplicable | None:
    """The reason not to ask, or None where a cassette and a derailleur move to the new wheel."""
    if bike.drivetrain == "derailleur":
        return None
    return SINGLE_COG if bike.drivetrain == "single_speed" else DRIVE_IN_THE_HUB


def label(fact: str, word: str) -> str:
    """A word of a choice as it is shown on the forms."""
    choice = FACTS[fact]
    assert isinstance(choice, ChoiceFact)  # noqa: S101 - only names of choices are passed here
    return choice.label_of(word)
