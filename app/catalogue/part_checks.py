"""What must agree within one part: low below high, a thru-axle with a diameter, a clamp with its sections."""

from __future__ import annotations

from collections.abc import Iterator
from functools import singledispatch

from app.catalogue.along_axle_checks import cog_faults, shell_faults, stack_faults
from app.catalogue.arm_steps import leaves_a_gap
from app.catalogue.dimension import plain
from app.catalogue.drive_parts import Pack, Sensor
from app.catalogue.hub_parts import AxleSet, Freehub, Hub, TorqueArm
from app.catalogue.outline import outline_faults, within
from app.catalogue.part import Part
from app.catalogue.wheel_parts import Adapter
from app.facts.span import THOUSAND, Span

# A field of the part and what is wrong with it.
FieldFault = tuple[str, str]

# Measured from a face or a centre line to either side of it.
SIGNED = frozenset(
    {
        *("outer_face_mm", "inner_face_mm", "cover_face_mm", "index_from_deg", "index_to_deg"),
        *("level_from_deg", "level_to_deg"),
        *("offset_low_mm", "offset_high_mm", "lateral_low_mm", "lateral_high_mm"),
    }
)
QUARTER_TURN = 90 * THOUSAND
MOST_CLEARANCE = 5 * THOUSAND
PLUGS = ("round_6", "round_9", "flat_3", "flat_5", "spade_2", "ring_2")
FIXINGS = ("six_bolt", "center_lock")


def part_faults(part: Part) -> Iterator[FieldFault]:
    """Every fault that one part shows by itself, its values being readable."""
    yield from _negative(part)
    yield from _of_kind(part)


def _negative(part: Part) -> Iterator[FieldFault]:
    for name in type(part).model_fields:
        value = getattr(part, name)
        if isinstance(value, Span) and value.low < 0 and name not in SIGNED:
            yield name, f"must not be below 0, but is {plain(value.low)}"


def _pair(part: Part, low_name: str, high_name: str, *, may_be_one: bool = True) -> Iterator[FieldFault]:
    low, high = getattr(part, low_name), getattr(part, high_name)
    if (low is None) != (high is None):
        missing, given = (low_name, high_name) if low is None else (high_name, low_name)
        yield missing, f"is missing; {given} is given, and the two belong together"
    elif low is not None and (low.low > high.high or (low.low == high.high and not may_be_one)):
        yield low_name, f"must be below {high_name}, but is {plain(low.low)} where that is {plain(high.high)}"


@singledispatch
def _of_kind(_part: Part) -> Iterator[FieldFault]:
    return iter(())


@_of_kind.register
def _hub(part: Hub) -> Iterator[FieldFault]:
    yield from _pair(part, "bead_seat_smallest_mm", "bead_seat_largest_mm")
    yield from shell_faults(part)
    if "disc" in part.brakes and part.rotor_fixing is None:
        yield "rotor_fixing", "is missing; a hub that keeps a disc brake says how the rotor is fixed"
    if "disc" in part.brakes:
        yield from _pair(part, "rotor_smallest_mm", "rotor_largest_mm")
    elif part.rotor_fixing is not None:
        yield "brakes", "names no disc, but rotor_fixing is given; add disc or take rotor_fixing out"


@_of_kind.register
def _axle_set(part: AxleSet) -> Iterator[FieldFault]:
    yield from _pair(part, "takes_low_mm", "takes_high_mm", may_be_one=False)
    yield from stack_faults(part)
    if not (
        part.takes_low_mm.low <= part.over_locknut_mm.low
        and part.over_locknut_mm.high <= part.takes_high_mm.high
    ):
        yield "over_locknut_mm", "must lie from takes_low_mm to takes_high_mm"
    if part.end == "thru":
        yield from _thru(part)
    else:
        yield from _slotted(part)


def _thru(part: AxleSet) -> Iterator[FieldFault]:
    if part.dropout_kinds != ("thru_axle",):
        yield "dropout_kinds", "must be [thru_axle] alone where end is thru"
    if part.thru_diameter_mm is None:
        yield "thru_diameter_mm", "is missing; a set for a thru-axle says which it takes"
    if part.flatted:
        yield "flatted", "must be false where end is thru: a closed bore holds no flats"
    if part.slot_needs_mm is not None:
        yield "slot_needs_mm", "is for slotted dropouts, and end is thru"


def _slotted(part: AxleSet) -> Iterator[FieldFault]:
    if "thru_axle" in part.dropout_kinds:
        yield "dropout_kinds", f"must not hold thru_axle where end is {part.end}"
    if part.slot_needs_mm is None:
        yield "slot_needs_mm", "is missing; a set for slots says how wide a slot its axle end needs"
    for name in ("thru_diameter_mm", "under_head_mm"):
        if getattr(part, name) is not None:
            yield name, f"is for thru-axles, and end is {part.end}"


@_of_kind.register
def _freehub(part: Freehub) -> Iterator[FieldFault]:
    yield from cog_faults(part)


@_of_kind.register
def _torque_arm(part: TorqueArm) -> Iterator[FieldFault]:
    yield from _pair(part, "reach_from_mm", "reach_to_mm", may_be_one=False)
    if part.reach_from_mm.low == 0:
        yield "reach_from_mm", "must be above 0; it is the shortest lever that holds the motor's torque"
    for stem in ("clamp_width", "clamp_height", "offset", "lateral"):
        yield from _pair(part, f"{stem}_low_mm", f"{stem}_high_mm")
    if part.anchor == "stay_clamp" and not part.sections:
        yield "sections", "needs at least one in the list where anchor is stay_clamp"
    if part.anchor == "mount_bolt" and part.sections:
        yield "sections", "is for a stay_clamp, and anchor is mount_bolt"
    yield from _outline(part)
    yield from _clamp(part)


def _clamp(part: TorqueArm) -> Iterator[FieldFault]:
    yield from _pair(part, "level_from_deg", "level_to_deg", may_be_one=False)
    if leaves_a_gap(part):
        yield "index_angles_deg", "leave a gap between what the clamp reaches at one step and at the next"
    if part.clamp_length_mm.low > part.reach_to_mm.high - part.reach_from_mm.low:
        yield "clamp_length_mm", "must be shorter than the reach that the clamp lies in"
    if any(not part.clamp_may_be.holds(place) for place in part.clamp_places_mm):
        yield "clamp_places_mm", "must leave the whole clamp between reach_from_mm and reach_to_mm"
    for name in ("swivel_in_plane_deg", "swivel_across_deg"):
        swivel: Span | None = getattr(part, name)
        if swivel is not None and swivel.high >= QUARTER_TURN:
            yield name, f"must be below 90, but is {plain(swivel.high)}"
    if part.holds_braking is False and part.rated_reverse_force_n is not None:
        yield "rated_reverse_force_n", "is given, but holds_braking is false; take one of them out"


def _outline(part: TorqueArm) -> Iterator[FieldFault]:
    if part.clearance_mm is not None and part.clearance_mm.high > MOST_CLEARANCE:
        yield "clearance_mm", f"must be at most {plain(MOST_CLEARANCE)}; no arm runs further from a caliper"
    yield from _pair(part, "index_from_deg", "index_to_deg", may_be_one=False)
    if part.index_angles_deg and part.index_from_deg is not None:
        yield "index_angles_deg", "is for an arm with steps, and index_from_deg is given; keep one of the two"
    if not all(angle.is_exact for angle in part.index_angles_deg):
        yield "index_angles_deg", "must be single numbers, without a ± or a range"
    if part.holes and not part.outline:
        yield "outline", "is missing; holes are given"
    if part.outline and not any(within(corner, part.disc_radius_mm) for corner in part.outline):
        yield "outline", "must have a corner within disc_radius_mm of the axle; bar and disc are one piece"
    for name, outlines in (("outline", (part.outline,) if part.outline else ()), ("holes", part.holes)):
        for fault in {fault for outline in outlines for fault in outline_faults(outline)}:
            yield name, fault


@_of_kind.register
def _pack(part: Pack) -> Iterator[FieldFault]:
    yield from _pair(part, "nominal_v", "full_v", may_be_one=False)


@_of_kind.register
def _sensor(part: Sensor) -> Iterator[FieldFault]:
    if part.sits == "bottom_bracket" and part.freehubs:
        yield "freehubs", "is for a sensor on the freehub, and this one sits at the bottom bracket"


@_of_kind.register
def _adapter(part: Adapter) -> Iterator[FieldFault]:
    allowed = FIXINGS if part.joins == "rotor" else PLUGS
    for name in ("of", "to"):
        value = getattr(part, name)
        if value not in allowed:
            yield name, f"{value!r} is not known; allowed where it joins {part.joins}: {', '.join(allowed)}"
    if part.of == part.to:
        yield "to", f"must differ from of; both are {part.of!r}"
