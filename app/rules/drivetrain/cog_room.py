"""Whether the smallest cog, and the chain on it, find room beside the drive-side dropout."""

from __future__ import annotations

from app.catalogue.along_axle_checks import length_of
from app.catalogue.hub_parts import AxleSet, Freehub
from app.catalogue.provenance import Provenance
from app.catalogue.standards import Standards
from app.facts.bike import Bike
from app.facts.span import Span
from app.mechanics.cogs_beside import chain_beside_cog_mm, cog_to_dropout
from app.rules.axle.applies import another_kind, socket_depth
from app.rules.check import Check, Inapplicable, Limit, Missing, touching
from app.rules.drivetrain.applies import no_cassette
from app.rules.outcome import Weight
from app.rules.rule import PART_DATA, PRACTICE, Says, rule

APPLIES = "Where the bike has a cassette, and the axle set is made for the kind of dropout it has."
ASSUMES = "The cassette ends where the maker of the freehub says, and both sockets are equally deep."
NOT_KNOWN = "Measure the depth of closed sockets, and count the cogs on the rear wheel."
REMEDY = (
    "Take another freehub or axle set for this hub. A washer between the axle's end and the dropout "
    "makes room too: as many on the left, or the wheel is dished again."
)


def _room(bike: Bike, axle_set: AxleSet, freehub: Freehub) -> Span | Inapplicable | Missing:
    """From the smallest cog's outer face to the dropout."""
    if elsewhere := no_cassette(bike) or another_kind(bike, axle_set):
        return elsewhere
    if not axle_set.right_stack:
        return Missing(axle_set, "right_stack")
    if freehub.smallest_cog_face_mm is None:
        return Missing(freehub, "smallest_cog_face_mm")
    return cog_to_dropout(
        right_mm=length_of(axle_set.right_stack),
        smallest_cog_face_mm=freehub.smallest_cog_face_mm,
        socket_depth_mm=socket_depth(bike),
    )


@rule(
    title="The smallest cog clears the dropout",
    weight=Weight.BLOCKS,
    applies=APPLIES,
    expects="The smallest cog ends before the inner face of the drive-side dropout.",
    assumes=ASSUMES,
    source=PART_DATA,
    settled_by=("drivetrain", "dropout_kind", "socket_depth_mm"),
    says=Says(
        passed="From the smallest cog to the dropout {reading}. At worst {margin} in hand.",
        failed="From the smallest cog to the dropout {reading}. At best they overlap by {margin}.",
        not_known=NOT_KNOWN,
        remedy=REMEDY,
    ),
)
def cog_beside_dropout(bike: Bike, axle_set: AxleSet, freehub: Freehub) -> Check | Inapplicable | Missing:
    room = _room(bike, axle_set, freehub)
    return Check(reading=room, unit="mm", low=touching()) if isinstance(room, Span) else room


@rule(
    title="The chain on the smallest cog clears the dropout",
    weight=Weight.CAUTIONS,
    applies=APPLIES,
    expects="From cog to dropout there are 2 mm, and as much as a chain for so many cogs stands out.",
    assumes=ASSUMES,
    source=PRACTICE,
    settled_by=("drivetrain", "dropout_kind", "socket_depth_mm", "cassette_speeds"),
    says=Says(
        passed="From the smallest cog to the dropout {reading}; {low} is wanted, and the chain stands out "
        "{chain_mm}. At worst {margin} in hand.",
        failed="From the smallest cog to the dropout {reading}; {low} is wanted, and the chain stands out "
        "{chain_mm}. At best {margin} too little.",
        not_known=NOT_KNOWN,
        remedy=REMEDY,
    ),
)
def chain_beside_dropout(
    bike: Bike, axle_set: AxleSet, freehub: Freehub, standards: Standards
) -> Check | Inapplicable | Missing:
    room = _room(bike, axle_set, freehub)
    if not isinstance(room, Span):
        return room
    chain = chain_beside_cog_mm(bike.cassette_speeds, standards.cog_pitches)
    least = standards.limit("beside_dropout_mm").value.at_least(chain)
    limit = Limit(least, Provenance.MEMORY, source="Common practice; widths of chains from memory")
    return Check(reading=room, unit="mm", low=limit, values={"chain_mm": chain})
