"""The pieces of the axle section of one bike with one kit, as mechanics stacks them, with radii to draw."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence
from typing import cast

import shapely
from shapely import Polygon

from app.drawings.axle_scene import Piece, block
from app.drawings.subject import Subject, middle_of
from app.facts.answers import number
from app.facts.span import Span
from app.mechanics.axle_rows import AxialRow, Kind
from app.mechanics.axle_section import AxialStack, OnTheAxle, stack_on
from app.mechanics.cogs_beside import cog_radius_mm

# In mm, where nobody measured: how deep a socket and how thick a plate and a rotor usually are.
USUAL = {"socket_depth_mm": "3.5", "dropout_thickness_mm": "6", "rotor_thickness_mm": "1.8"}
# Radii in mm that no part states: axle, plate, hub end in its socket, and pieces of the stack by their names.
AXLE, PLATE, HUB_END = 6.0, 26.0, 11.0
RADII = {"rotor boss": 21.0, "freehub": 17.0, "locknut": 11.0, "arm seat": 9.0, "collar": 12.5, "nut": 11.0}
OTHER_RADIUS, ROTOR_HOLE, OVER_ROTOR = 12.0, 17.0, 11.0
# Half the room for the rotor between the halves of a caliper.
BESIDE_ROTOR = 0.9

Maker = Callable[[Subject, AxialStack, AxialRow], Iterator[Piece]]


def stack_of(subject: Subject) -> AxialStack:
    """What lies where on the axle; a length that nobody measured is taken as it usually is."""
    answers = subject.answers
    taken = [number(name, Span.exactly(mm)) for name, mm in USUAL.items() if not answers.is_known(name)]
    parts = OnTheAxle(subject.hub, subject.axle_set, subject.torque_arm, subject.freehub)
    return stack_on(answers.with_(*taken), parts, subject.standards)


def pieces_of(subject: Subject, stack: AxialStack) -> Iterator[Piece]:
    """Everything on the axle and beside it, from the back to the front."""
    yield Piece("", "axle", _axle(subject, stack))
    for kind in BACK_TO_FRONT:
        rows = stack.of_kind(kind)
        if kind == "shell":
            yield from _shell(rows, stack.of_kind("cover"))
        else:
            for row in rows:
                yield from MAKERS[kind](subject, stack, row)


def _axle(subject: Subject, stack: AxialStack) -> Polygon:
    """The axle, or the one that holds the hub, from end to end."""
    start, end = middle_of(stack.faces.left_floor_mm), middle_of(stack.faces.right_floor_mm)
    length = subject.axle_set.axle_length_mm
    beyond = PLATE / 4 if length is None else (middle_of(length) - (end - start)) / 2
    return block(start - beyond, end + beyond, 0, AXLE)


def _ends(row: AxialRow) -> tuple[float, float]:
    return middle_of(row.from_mm), middle_of(row.to_mm)


def _dropout(_: Subject, stack: AxialStack, row: AxialRow) -> Iterator[Piece]:
    """A plate with its socket, as the hub stands in it. One of the two has the name."""
    left, right = _ends(row)
    is_left = row.to_mm == Span(0, 0)
    lip, end = (right, left) if is_left else (left, right)
    floor = middle_of(stack.faces.left_floor_mm if is_left else stack.faces.right_floor_mm)
    socket = [(lip, HUB_END), (floor, HUB_END)] if floor != lip else []
    plate = Polygon([(end, AXLE), (end, PLATE), (lip, PLATE), *socket, (floor, AXLE)])
    yield Piece("" if is_left else "dropout", "frame", plate)


def _piece(_: Subject, __: AxialStack, row: AxialRow) -> Iterator[Piece]:
    yield Piece("", "axle", block(*_ends(row), AXLE, RADII.get(row.name, OTHER_RADIUS)))


def _arm(_: Subject, __: AxialStack, row: AxialRow) -> Iterator[Piece]:
    radius = row.outer_radius_mm.ends[1] if row.outer_radius_mm else OTHER_RADIUS
    yield Piece("arm", "arm", block(row.from_mm.ends[0], row.to_mm.ends[1], AXLE, radius))


def _shell(steps: Sequence[AxialRow], rims: Sequence[AxialRow]) -> Iterator[Piece]:
    """The shell as near to the caliper as it may come, its steps and the rim of its cover as one."""
    blocks = [
        block(row.from_mm.ends[0], middle_of(row.to_mm), AXLE, row.outer_radius_mm.ends[1])
        for row in steps
        if row.outer_radius_mm is not None
    ]
    for rim in rims:
        if blocks and rim.inner_radius_mm is not None:
            outer = max(each.bounds[3] for each in blocks)
            blocks.append(block(*_ends(rim), middle_of(rim.inner_radius_mm), outer))
    if blocks:
        yield Piece("motor shell", "shell", cast("Polygon", shapely.union_all(blocks)))


def _cogs(subject: Subject, _: AxialStack, row: AxialRow) -> Iterator[Piece]:
    """From the largest cog to the smallest, where both have been counted."""
    smallest = subject.span("smallest_cog")
    if subject.span("largest_cog") is None or smallest is None or row.outer_radius_mm is None:
        return
    (start, end), high, low = _ends(row), row.outer_radius_mm.ends[1], cog_radius_mm(smallest).ends[1]
    hole = min(RADII["freehub"], low - 1)
    yield Piece("cogs", "freehub", Polygon([(start, hole), (start, high), (end, low), (end, hole)]))


def _rotor(subject: Subject, _: AxialStack, row: AxialRow) -> Iterator[Piece]:
    diameter = subject.span("rotor_diameter_mm")
    if diameter is not None and subject.word("rear_brake") == "disc":
        yield Piece("rotor", "rotor", block(*_ends(row), ROTOR_HOLE, diameter.ends[1] / 2))


def _caliper(subject: Subject, _: AxialStack, row: AxialRow) -> Iterator[Piece]:
    """One half: as far as it may reach, and where it is for sure."""
    rotor, nearest = subject.span("rotor_diameter_mm"), row.inner_radius_mm
    is_outer = row.name.startswith("outer")
    measured = "caliper_nearest_mm" if is_outer else "caliper_inboard_nearest_mm"
    if subject.word("rear_brake") != "disc" or rotor is None or nearest is None or not subject.span(measured):
        return
    top = rotor.ends[1] / 2 + OVER_ROTOR
    possible = (row.from_mm.ends[0], row.to_mm.ends[1])
    yield Piece("caliper", "possible", block(*possible, nearest.ends[0], top))
    sure = (
        (row.from_mm.ends[1], row.to_mm.ends[0] - BESIDE_ROTOR)
        if is_outer
        else (row.from_mm.ends[1] + BESIDE_ROTOR, row.to_mm.ends[0])
    )
    if sure[0] < sure[1] and nearest.ends[1] < top - 1:
        yield Piece("", "sure", block(*sure, nearest.ends[1], top - 1))


MAKERS: Mapping[Kind, Maker] = {
    "dropout": _dropout,
    "washers": _piece,
    "nut": _piece,
    "piece": _piece,
    "cogs": _cogs,
    "arm": _arm,
    "rotor": _rotor,
    "caliper": _caliper,
}
BACK_TO_FRONT: tuple[Kind, ...] = (
    "dropout", "washers", "nut", "piece", "shell", "cogs", "arm", "rotor", "caliper",
)  # fmt: skip
