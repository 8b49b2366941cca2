"""Whether the rotor is thick enough to stay on the converted bike."""

from __future__ import annotations

from app.catalogue.provenance import Provenance
from app.catalogue.standards import Standards
from app.facts.bike import Bike
from app.facts.span import Span
from app.mechanics.rotor_wear import wear_of
from app.rules.brake.applies import no_disc
from app.rules.check import Check, Inapplicable, Limit
from app.rules.outcome import Weight
from app.rules.rule import Says, Source, rule

SOURCE = Source("Disc brake rotor wear", "feedbacksports.com/mechanics-corner-disc-brake-rotor-wear")
NOTHING_LEFT = Limit(Span(0, 0), Provenance.PUBLISHED, source=str(SOURCE))


@rule(
    title="The rotor is thick enough to stay",
    weight=Weight.CAUTIONS,
    applies="Where the rear brake is a disc brake.",
    expects="The rotor is as thick at its thinnest place as its kind may be worn to, by the table of rotors.",
    assumes="It is of the thinnest kind that was no thinner when new: 1.8, 2.0 or 2.3 mm. "
    "The least thickness printed on the rotor wins.",
    source=SOURCE,
    settled_by=("rear_brake", "rotor_thickness_mm"),
    limits=(NOTHING_LEFT,),
    version=2,
    says=Says(
        passed="Rotor {thickness_mm} thick; {least_mm} is the least for its kind. At worst {margin} in hand.",
        failed="Rotor {thickness_mm} thick; {least_mm} is the least for its kind. At best {margin} too thin.",
        not_known="Measure the rotor's thickness on the brake track.",
        remedy="Read the least thickness printed on the rotor. If it is thinner, fit a new one "
        "before the wheel goes in.",
    ),
)
def rotor_wear(bike: Bike, standards: Standards) -> Check | Inapplicable:
    """A converted bike is heavier and faster, so that its rotor gets hotter."""
    if elsewhere := no_disc(bike):
        return elsewhere
    wear = wear_of(bike.rotor_thickness_mm, standards.rotor_thicknesses)
    values = {"thickness_mm": bike.rotor_thickness_mm, "least_mm": wear.least_mm}
    return Check(reading=wear.left_mm, unit="mm", low=NOTHING_LEFT, values=values)
