"""Whether the motor shell, far wider than a bicycle hub, clears the inner half of the caliper."""

from __future__ import annotations

from app.catalogue.hub_parts import AxleSet, Hub
from app.facts.bike import Bike
from app.facts.span import Span
from app.mechanics.axial_stack import shell_to_caliper
from app.mechanics.caliper_clearance import disc_gap, prism_gap
from app.rules.axle.applies import another_kind
from app.rules.brake.applies import no_disc
from app.rules.brake.rotor_plane import socket_depth
from app.rules.check import Check, Inapplicable, Limit, Missing, habit, of_part, touching
from app.rules.outcome import Weight
from app.rules.rule import PART_DATA, PRACTICE, Says, Source, rule

NOTHING_WANTED = Inapplicable("The maker of this hub asks for no more than that it doesn't touch.")

RUNNING = habit("1.5")

APPLIES = "Where a disc brake stays and the axle set is made for the kind of dropout the bike has."
ASSUMES = "The caliper stays where it is, and the shell is a drum as wide as its widest part."
SETTLED_BY = (
    "rear_brake",
    "dropout_kind",
    "socket_depth_mm",
    "rotor_offset_mm",
    "caliper_inboard_nearest_mm",
    "caliper_inboard_depth_mm",
)
NOT_KNOWN = (
    "Wheel out: measure how near the caliper's inner half comes to the axle and how far in it reaches, "
    "the rotor's distance from the dropout, and the depth of closed sockets."
)
REMEDY = (
    "Take an axle set that puts the shell further in, a slimmer caliper, "
    "or a larger rotor and its adapter, and measure again."
)


def _against(bike: Bike, hub: Hub, axle_set: AxleSet, low: Limit) -> Check | Inapplicable | Missing:
    """The gap between shell and caliper, to be judged by one lower limit."""
    if elsewhere := no_disc(bike) or another_kind(bike, axle_set):
        return elsewhere
    if hub.shell_radius_mm is None:
        return Missing(hub, "shell_radius_mm")
    if axle_set.shell_face_mm is None:
        return Missing(axle_set, "shell_face_mm")
    return Check(reading=_gap(bike, hub.shell_radius_mm, axle_set.shell_face_mm), unit="mm", low=low)


def _gap(bike: Bike, shell_radius_mm: Span, shell_face_mm: Span) -> Span:
    in_plane = disc_gap(distance_mm=bike.caliper_inboard_nearest_mm, radius_mm=shell_radius_mm)
    along_axle = shell_to_caliper(
        shell_face_mm=shell_face_mm,
        socket_depth_mm=socket_depth(bike),
        rotor_offset_mm=bike.rotor_offset_mm,
        inboard_depth_mm=bike.caliper_inboard_depth_mm,
    )
    return prism_gap(plane_mm=in_plane, axial_mm=along_axle)


@rule(
    title="The motor shell clears the caliper",
    weight=Weight.BLOCKS,
    applies=APPLIES,
    expects="Shell and caliper are apart, outside the shell's radius or along the axle.",
    assumes=ASSUMES,
    source=Source("Geometry", "the gap of two prisms"),
    settled_by=SETTLED_BY,
    says=Says(
        passed="Gap between motor shell and caliper: {reading}. At worst {margin} in hand.",
        failed="Gap between motor shell and caliper: {reading}. At best they overlap by {margin}.",
        not_known=NOT_KNOWN,
        remedy=REMEDY,
    ),
)
def shell_caliper(bike: Bike, hub: Hub, axle_set: AxleSet) -> Check | Inapplicable | Missing:
    return _against(bike, hub, axle_set, touching())


@rule(
    title="The shell has the clearance that its maker wants",
    weight=Weight.BLOCKS,
    applies="Where a disc brake stays, the axle set suits the dropouts, and the maker wants a clearance.",
    expects="Shell and caliper are as far apart as the hub's maker wants.",
    assumes=ASSUMES,
    source=PART_DATA,
    settled_by=SETTLED_BY,
    says=Says(
        passed="Gap between motor shell and caliper: {reading}; the maker wants {low}. "
        "At worst {margin} in hand.",
        failed="Gap between motor shell and caliper: {reading}; the maker wants {low}. "
        "At best {margin} too little.",
        not_known=NOT_KNOWN,
        remedy=REMEDY,
    ),
)
def shell_caliper_wanted(bike: Bike, hub: Hub, axle_set: AxleSet) -> Check | Inapplicable | Missing:
    if hub.shell_clearance_mm is None:
        return NOTHING_WANTED
    return _against(bike, hub, axle_set, of_part(hub.shell_clearance_mm))


@rule(
    title="Shell and caliper have room to run",
    weight=Weight.CAUTIONS,
    applies=APPLIES,
    expects="Shell and caliper are 1.5 mm apart with the wheel at rest.",
    assumes=ASSUMES,
    source=PRACTICE,
    settled_by=SETTLED_BY,
    limits=(RUNNING,),
    says=Says(
        passed="Gap between motor shell and caliper: {reading}; {low} is wanted. At worst {margin} in hand.",
        failed="Gap between motor shell and caliper: {reading}; {low} is wanted. "
        "At best {margin} too little.",
        not_known=NOT_KNOWN,
        remedy="Line the caliper up with new pads, turn the loaded wheel, and look for marks on the shell.",
    ),
)
def shell_caliper_running(bike: Bike, hub: Hub, axle_set: AxleSet) -> Check | Inapplicable | Missing:
    return _against(bike, hub, axle_set, RUNNING)
