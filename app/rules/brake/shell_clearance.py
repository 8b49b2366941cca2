"""Whether the motor shell, far wider than a bicycle hub, clears the inner half of the caliper."""

from __future__ import annotations

from app.catalogue.hub_parts import AxleSet, Hub
from app.facts.bike import Bike
from app.facts.span import Span
from app.mechanics.axial_stack import shell_to_caliper
from app.mechanics.shell_profile import shell_gap, steps_of
from app.rules.axle.applies import another_kind, socket_depth
from app.rules.brake.applies import BY_GAUGE, no_disc, shell_gauge_tells
from app.rules.check import Check, Inapplicable, Limit, Missing, habit, of_part, touching
from app.rules.outcome import Weight
from app.rules.rule import PART_DATA, PRACTICE, Says, Source, rule

NOTHING_WANTED = Inapplicable("The maker of this hub asks for no more than that it doesn't touch.")

RUNNING = habit("1.5")

APPLIES = "Where a disc brake stays and the axle set is made for the kind of dropout the bike has."
ASSUMES = (
    "The caliper stays where it is. Its inner half reaches as far in all the way out from its nearest point "
    "as its innermost point does."
)
SETTLED_BY = (
    "rear_brake",
    "dropout_kind",
    "socket_depth_mm",
    "rotor_offset_mm",
    "caliper_inboard_nearest_mm",
    "caliper_inboard_depth_mm",
)
GAUGE = "gauge_shell_clears"
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
    steps, face = steps_of(hub), axle_set.shell_face_mm
    if not steps:
        return Missing(hub, "shell_radius_mm")
    if face is None:
        return Missing(axle_set, "shell_face_mm")
    gap = shell_gap(steps=steps, room_mm=_room(bike, face), nearest_mm=bike.caliper_inboard_nearest_mm)
    return Check(reading=gap, unit="mm", low=low)


def _measured(bike: Bike, hub: Hub, axle_set: AxleSet, low: Limit) -> Check | Inapplicable | Missing:
    """The same, unless the paper gauge of this shell has told it."""
    return BY_GAUGE if shell_gauge_tells(bike, hub, axle_set) else _against(bike, hub, axle_set, low)


def _room(bike: Bike, shell_face_mm: Span) -> Span:
    return shell_to_caliper(
        shell_face_mm=shell_face_mm,
        socket_depth_mm=socket_depth(bike),
        rotor_offset_mm=bike.rotor_offset_mm,
        inboard_depth_mm=bike.caliper_inboard_depth_mm,
    )


@rule(
    title="The motor shell clears the caliper",
    weight=Weight.BLOCKS,
    applies=APPLIES,
    expects="The caliper is apart from every step of the shell, across the axle or along it.",
    assumes=ASSUMES,
    source=Source("Geometry", "the gap of two prisms"),
    settled_by=(*SETTLED_BY, GAUGE),
    version=3,
    says=Says(
        passed="Gap between motor shell and caliper: {reading}. At worst {margin} in hand.",
        failed="Gap between motor shell and caliper: {reading}. At best they overlap by {margin}.",
        not_known=NOT_KNOWN,
        remedy=REMEDY,
    ),
)
def shell_caliper(bike: Bike, hub: Hub, axle_set: AxleSet) -> Check | Inapplicable | Missing:
    return _measured(bike, hub, axle_set, touching())


@rule(
    title="The shell has the clearance that its maker wants",
    weight=Weight.BLOCKS,
    applies="Where a disc brake stays, the axle set suits the dropouts, and the maker wants a clearance.",
    expects="Shell and caliper are as far apart as the hub's maker wants.",
    assumes=ASSUMES,
    source=PART_DATA,
    settled_by=(*SETTLED_BY, GAUGE),
    version=3,
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
    return _measured(bike, hub, axle_set, of_part(hub.shell_clearance_mm))


@rule(
    title="Shell and caliper have room to run",
    weight=Weight.CAUTIONS,
    applies=APPLIES,
    expects="Shell and caliper are 1.5 mm apart with the wheel at rest.",
    assumes=ASSUMES,
    source=PRACTICE,
    settled_by=SETTLED_BY,
    version=2,
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
