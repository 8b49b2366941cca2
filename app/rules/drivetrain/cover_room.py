"""Whether the largest cog, and the chain on it, find room beside the rim of the motor's cover."""

from __future__ import annotations

from app.catalogue.hub_parts import Freehub, Hub
from app.catalogue.part import Part
from app.catalogue.provenance import Provenance
from app.catalogue.standards import Standards
from app.facts.bike import Bike
from app.facts.span import Span
from app.mechanics.cogs_beside import chain_beside_cog_mm, cog_radius_mm, cog_to_cover
from app.rules.check import Check, Inapplicable, Missing, touching
from app.rules.drivetrain.applies import no_cassette
from app.rules.outcome import Weight
from app.rules.rule import Says, Source, rule

NOTHING = Span(0, 0)
APPLIES = "Where the bike has a cassette and a derailleur."
SOURCE = Source("Geometry", "a chain of half-inch links round a cog, and the parts' own data")
REMEDY = "Take a cassette with a smaller largest cog, or a freehub whose cogs stand further out."


def _gap(hub: Hub, freehub: Freehub, radius_mm: Span, beside_mm: Span) -> Span | Missing:
    """To the rim of the cover, from a cog of this radius or a chain that stands out beside it."""
    rim, face, cog = hub.cover_radius_mm, hub.cover_face_mm, freehub.largest_cog_face_mm
    lacking: tuple[tuple[Part, str, Span | None], ...] = (
        (hub, "cover_radius_mm", rim),
        (hub, "cover_face_mm", face),
        (freehub, "largest_cog_face_mm", cog),
    )
    if rim is None or face is None or cog is None:
        return next(Missing(part, name) for part, name, value in lacking if value is None)
    return cog_to_cover(
        cover_radius_mm=rim, cover_face_mm=face, radius_mm=radius_mm, largest_cog_face_mm=cog - beside_mm
    )


def _rim(hub: Hub) -> Span:
    return NOTHING if hub.cover_radius_mm is None else hub.cover_radius_mm


@rule(
    title="The largest cog clears the rim of the motor's cover",
    weight=Weight.BLOCKS,
    applies=APPLIES,
    expects="The largest cog lies within the rim of the drive-side cover, or further out along the axle.",
    assumes="The cassette stands on the freehub body as one does that the body is made for.",
    source=SOURCE,
    settled_by=("drivetrain", "largest_cog"),
    says=Says(
        passed="The largest cog reaches {radius_mm} from the axle, the cover's rim begins at {rim_mm}: "
        "gap {reading}.",
        failed="The largest cog reaches {radius_mm} from the axle, the cover's rim begins at {rim_mm}. "
        "At best they overlap by {margin}.",
        not_known="Count the teeth of the largest cog from a chalk mark.",
        remedy=REMEDY,
    ),
)
def cog_beside_cover(bike: Bike, hub: Hub, freehub: Freehub) -> Check | Inapplicable | Missing:
    """To the rollers only: teeth and chain reach a little further."""
    if reason := no_cassette(bike):
        return reason
    radius = cog_radius_mm(bike.largest_cog)
    gap = _gap(hub, freehub, radius, NOTHING)
    if isinstance(gap, Missing):
        return gap
    values = {"radius_mm": radius, "rim_mm": _rim(hub)}
    return Check(reading=gap, unit="mm", low=touching(), values=values)


@rule(
    title="The chain on the largest cog clears the rim of the motor's cover",
    weight=Weight.CAUTIONS,
    applies=APPLIES,
    expects="A chain for so many cogs passes the rim of the drive-side cover, within it or beside it.",
    assumes="The cassette stands on the freehub body as one does that the body is made for.",
    source=SOURCE,
    settled_by=("drivetrain", "largest_cog", "cassette_speeds"),
    says=Says(
        passed="The chain on the largest cog reaches {radius_mm} from the axle and stands out {chain_mm} "
        "beside it; the cover's rim begins at {rim_mm}. Gap {reading}.",
        failed="The chain on the largest cog reaches {radius_mm} from the axle and stands out {chain_mm} "
        "beside it; the cover's rim begins at {rim_mm}. At best they overlap by {margin}.",
        not_known="Count the cogs of the rear wheel, and the teeth of the largest from a chalk mark.",
        remedy=REMEDY,
    ),
)
def chain_beside_cover(
    bike: Bike, hub: Hub, freehub: Freehub, standards: Standards
) -> Check | Inapplicable | Missing:
    if reason := no_cassette(bike):
        return reason
    radius = cog_radius_mm(bike.largest_cog) + standards.limit("chain_over_rollers_mm").value
    beside = chain_beside_cog_mm(bike.cassette_speeds, standards.cog_pitches)
    gap = _gap(hub, freehub, radius, beside)
    if isinstance(gap, Missing):
        return gap
    values = {"radius_mm": radius, "rim_mm": _rim(hub), "chain_mm": beside}
    return Check(reading=gap, unit="mm", low=touching(Provenance.MEMORY), values=values)
