"""Whether the chain runs straight enough onto the new wheel's cogs."""

from __future__ import annotations

from fractions import Fraction

from app.catalogue.along_axle_checks import length_of
from app.catalogue.hub_parts import AxleSet, Freehub
from app.catalogue.standards import Standards
from app.facts.bike import Bike
from app.facts.span import Span
from app.mechanics.cassette import between_outermost_cogs, stack_of
from app.mechanics.chain_run import middle_of_cogs, middle_of_freewheel, off_straight_mm, rear_chainline_mm
from app.rules.check import Check, Inapplicable, Missing, habit, of_row
from app.rules.drivetrain.applies import DRIVE_IN_THE_HUB, no_cassette
from app.rules.outcome import Weight
from app.rules.rule import PRACTICE, Says, rule

HALF = Fraction(1, 2)

DERAILLEUR_OFF_MM = habit(2)
SINGLE_COG_OFF_MM = habit(1)


def _middle(bike: Bike, freehub: Freehub, standards: Standards) -> Span | None:
    """From the shell's right face to the middle of the cogs, by how many there are."""
    inner, outer = freehub.largest_cog_face_mm, freehub.smallest_cog_face_mm
    if inner is None or outer is None:
        return None
    stack = stack_of(bike.cassette_speeds, standards.cog_pitches)
    if freehub.interface == "threaded_freewheel":
        return middle_of_freewheel(largest_cog_face_mm=inner, stack_mm=stack)
    return middle_of_cogs(smallest_cog_face_mm=outer, stack_mm=stack)


def rear_line(bike: Bike, axle_set: AxleSet, freehub: Freehub, standards: Standards) -> Span | None:
    """The middle of the cogs as the axle set's maker gives it, else where the bike's own come to stand."""
    if axle_set.rear_chainline_mm is not None or not axle_set.right_stack:
        return axle_set.rear_chainline_mm
    middle = _middle(bike, freehub, standards)
    if middle is None:
        return None
    right, width = length_of(axle_set.right_stack), axle_set.over_locknut_mm
    return rear_chainline_mm(over_locknut_mm=width, right_mm=right, middle_mm=middle)


@rule(
    title="The chainrings line up with the cogs",
    weight=Weight.CAUTIONS,
    applies="Where a chain drives cogs on the hub.",
    expects="The middle of the chainrings is at most 2 mm off the middle of the cogs; with one cog, 1 mm.",
    assumes="No washer is moved from one side of the axle to the other.",
    source=PRACTICE,
    settled_by=("drivetrain", "cassette_speeds", "chainline_mm"),
    limits=(DERAILLEUR_OFF_MM, SINGLE_COG_OFF_MM),
    version=2,
    says=Says(
        passed="The chainrings stand {reading} off the middle of the cogs, which is at {rear_chainline_mm}; "
        "up to {high} runs well. At worst {margin} in hand.",
        failed="The chainrings stand {reading} off the middle of the cogs, which is at {rear_chainline_mm}; "
        "up to {high} runs well.",
        not_known="Measure the chainline, middle of the frame to the middle of the chainrings, "
        "and count the cogs.",
        remedy="Move the chainrings by the length of the bottom bracket's axle or with spacers, "
        "or move washers on the hub's axle and dish the wheel again.",
    ),
)
def chainline(
    bike: Bike, axle_set: AxleSet, freehub: Freehub, standards: Standards
) -> Check | Inapplicable | Missing:
    """Off to either side is alike."""
    if bike.drivetrain not in {"derailleur", "single_speed"}:
        return DRIVE_IN_THE_HUB
    rear = rear_line(bike, axle_set, freehub, standards)
    if rear is None:
        return Missing(axle_set, "rear_chainline_mm")
    most = SINGLE_COG_OFF_MM if bike.drivetrain == "single_speed" else DERAILLEUR_OFF_MM
    off = abs(bike.chainline_mm - rear)
    return Check(reading=off, unit="mm", high=most, values={"rear_chainline_mm": rear})


@rule(
    title="The chain runs onto the outermost cogs without rubbing",
    weight=Weight.CAUTIONS,
    applies="Where the bike has a cassette and a derailleur.",
    expects="On the further end cog the chain runs at most 3° off straight over the length of the chainstay.",
    assumes="With several chainrings, the outermost cogs are used from the nearer one.",
    source=PRACTICE,
    settled_by=("drivetrain", "cassette_speeds", "chainline_mm", "chainstay_length_mm"),
    says=Says(
        passed="On the further end cog the chain runs {reading} off straight; over this chainstay "
        "{high} is in use. At worst {margin} in hand.",
        failed="On the further end cog the chain runs {reading} off straight; over this chainstay "
        "{high} is in use. At best {margin} too much.",
        not_known="Measure the chainline and the length of the chainstay, and count the cogs.",
        remedy="Bring the chainrings into line with the cogs, or leave out the end cog on the far side.",
    ),
)
def chain_angle(
    bike: Bike, axle_set: AxleSet, freehub: Freehub, standards: Standards
) -> Check | Inapplicable | Missing:
    if reason := no_cassette(bike):
        return reason
    rear = rear_line(bike, axle_set, freehub, standards)
    if rear is None:
        return Missing(axle_set, "rear_chainline_mm")
    to_end_cog = between_outermost_cogs(bike.cassette_speeds, standards.cog_pitches).times(HALF)
    offset = abs(bike.chainline_mm - rear) + to_end_cog
    angle = standards.limit("cross_chain_deg")
    most = off_straight_mm(angle_deg=angle.value, chainstay_mm=bike.chainstay_length_mm)
    return Check(reading=offset, unit="mm", high=of_row(angle, most))
