"""The shapes of the side view of one bike with one kit, each where part data and readings put it."""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

import shapely
from shapely.geometry.base import BaseGeometry

from app.drawings.narrowest import narrowest
from app.drawings.side_scene import Caliper, Gap, SideScene, Stay
from app.drawings.subject import Reading, Subject, middle_of
from app.facts.bike import Bike
from app.facts.fact import NumberFact
from app.facts.span import Span
from app.facts.table import FACTS
from app.mechanics.arm_beside_caliper import clearance
from app.mechanics.arm_outline import arm_body, index_angles, measures_of, outline_with_holes
from app.mechanics.arm_place import Margins, margins_of
from app.mechanics.caliper_envelope import Readings, caliper
from app.mechanics.clamp import clamp_of
from app.mechanics.place_beside_caliper import with_caliper
from app.mechanics.placement import stay_of
from app.mechanics.plane import NOTHING, turned
from app.mechanics.prism_gap import Room
from app.mechanics.ranges import Ranges
from app.report.numbers import span_text
from app.rules.brake.caliper_readings import near_readings, tables_of, whole_readings

# In degrees and mm, where nobody measured: how a stay falls, half its height; and a clamp's jaws.
USUAL_FALL, USUAL_HALF_HEIGHT, JAWS = 7.0, 9.0, 4.0
# A caliper that may be anywhere in so much room isn't known well enough to be drawn.
MOST_ROOM_MM2 = 26_000.0
# In mm: pieces so near are one, and two gaps that differ by less than is printed are one.
NEARLY_TOUCH, SAME_GAP = 4.0, 0.05
NOTHING_WANTED = Span(0, 0)
# The rule whose finding says how far the arm is from the caliper in the place where it ends up.
IN_ITS_PLACE = "arm_reach_clear_of_caliper"
NOTE = "{title}: {reading}."
NOT_MEASURED = "The caliper isn't measured closely enough to be drawn."


def side_of(subject: Subject) -> SideScene:
    """Everything that is known of the left side."""
    bike = _bike(subject)
    readings = _readings(subject, bike)
    placed = _placed(subject, bike, readings)
    beside = None if readings is None else _beside(subject, readings, placed)
    rotor = subject.span("rotor_diameter_mm") if subject.word("rear_brake") == "disc" else None
    return SideScene(
        stay=_stay(subject),
        rotor_radius_mm=None if rotor is None else middle_of(rotor) / 2,
        caliper=beside.caliper if beside else None,
        arm=turned(outline_with_holes(subject.torque_arm), placed.bearing_deg),
        clamp=_clamp(subject, placed),
        gap=beside.gap if beside else None,
        notes=tuple(_notes(subject, beside)),
    )


class _Placed(NamedTuple):
    """Where the arm ends up: its bearing, the clamp on the stay, and the gap to the caliper there."""

    bearing_deg: float
    on_stay_mm: float | None
    gap_mm: Span | None


class _Beside(NamedTuple):
    """The caliper as far as it is known, and the gap to it."""

    caliper: Caliper
    gap: Gap | None


def _bike(subject: Subject) -> Bike:
    """The whole bike, with the first word of a choice that isn't settled: the drawing then says little."""
    answers = subject.answers
    numbers = {name: answers.span(name) for name, fact in FACTS.items() if isinstance(fact, NumberFact)}
    words = {name: min(answers.words(name)) for name in FACTS if name not in numbers}
    return Bike({**numbers, **words}, frozenset())


def _readings(subject: Subject, bike: Bike) -> Readings | None:
    """What is known of the caliper: all of it, or its near side where no rule could read more."""
    if subject.word("rear_brake") != "disc" or not subject.word("caliper_mount"):
        return None
    if subject.reading("arm_caliper_far") is not None:
        return whole_readings(bike)
    return None if subject.reading("arm_caliper") is None else near_readings(bike)


def _placed(subject: Subject, bike: Bike, readings: Readings | None) -> _Placed:
    """The place that suits clamp and caliper best; where the clamp's isn't known, the caliper's alone."""
    arm, angles = measures_of(subject.torque_arm), index_angles(subject.torque_arm)
    tables = tables_of(subject.standards)
    margins = _margins(subject, bike)
    if margins is None:
        free = min(angles, key=abs)
        return _Placed(clearance(arm, angles, readings, tables).index_deg if readings else free, None, None)
    gap = None
    if readings is not None:
        wanted = subject.torque_arm.clearance_mm or NOTHING_WANTED
        margins = with_caliper(
            margins, arm=arm, angles=angles, readings=readings, tables=tables, wanted_mm=wanted
        )
        gap = _in_hand(margins, "caliper") + wanted
    choice, chosen = margins.choice(), margins.sure
    return _Placed(_middle(chosen.bearing_deg, choice), _middle(chosen.stay_mm, choice), gap)


def _in_hand(margins: Margins, name: str) -> Span:
    """What one limit has in hand at the best choice."""
    row, choice = margins.names.index(name), margins.choice()
    return Room(float(margins.hand.low[row, choice]), float(margins.hand.high[row, choice])).span()


def _middle(ranges: Ranges, choice: int) -> float:
    return float(ranges.low[choice] + ranges.high[choice]) / 2


def _beside(subject: Subject, readings: Readings, placed: _Placed) -> _Beside | None:
    """The caliper, unless it may be nearly anywhere."""
    known = caliper(readings, tables_of(subject.standards))
    possible = shapely.union_all([body.outer for body in known.bodies])
    if possible.area > MOST_ROOM_MM2:
        return None
    sure = shapely.union_all([body.inner for body in (*known.bodies, *known.sure)])
    near = narrowest(arm_body(measures_of(subject.torque_arm), placed.bearing_deg), known.bodies)
    reading = _gap_reading(subject, placed)
    gap = None
    if near is not None and reading is not None:
        gap = Gap(reading.rule_id, near.start, near.end, reading.text, near.plane, near.axial)
    spots = [spot.centre for body in known.bodies for spot in body.somewhere]
    return _Beside(Caliper(possible, _whole(sure, possible), tuple(spots)), gap)


def _whole(sure: BaseGeometry, possible: BaseGeometry) -> BaseGeometry:
    """The pieces of a caliper drawn as one: between two that nearly touch there is no gap in the metal."""
    closed = sure.buffer(NEARLY_TOUCH, join_style="mitre").buffer(-NEARLY_TOUCH, join_style="mitre")
    return shapely.intersection(closed, possible)


def _gap_reading(subject: Subject, placed: _Placed) -> Reading | None:
    """The number of the gap: of the best angle for the caliper, or of the angle at which the arm sits."""
    best = subject.reading("arm_caliper_far") or subject.reading("arm_caliper")
    if placed.gap_mm is None or best is None:
        return best
    low, high = placed.gap_mm.ends
    if abs(low - best.low) < SAME_GAP and abs(high - best.high) < SAME_GAP:
        return best
    return Reading(IN_ITS_PLACE, low, high, span_text(placed.gap_mm, "mm"))


def _stay(subject: Subject) -> Stay:
    is_round = subject.word("stay_section") == "round"
    height = subject.middle("stay_width_mm" if is_round else "stay_height_mm", 2 * USUAL_HALF_HEIGHT)
    start, end = subject.span("stay_clear_from_mm"), subject.span("stay_clear_to_mm")
    free = None if start is None or end is None else (start.ends[1], end.ends[0])
    falls = subject.middle("stay_angle_deg", USUAL_FALL)
    return Stay(falls, height / 2, subject.middle("stay_offset_mm", 0.0), free)


def _margins(subject: Subject, bike: Bike) -> Margins | None:
    """What the clamp has in hand at every place; None for an arm without one, or where nothing is known."""
    if subject.torque_arm.anchor != "stay_clamp" or subject.reading("arm_reach") is None:
        return None
    return margins_of(clamp_of(subject.torque_arm), stay_of(bike, subject.standards))


def _clamp(subject: Subject, placed: _Placed) -> BaseGeometry:
    """The clamp around the stay."""
    if placed.on_stay_mm is None:
        return NOTHING
    half, stay = middle_of(subject.torque_arm.clamp_length_mm) / 2, _stay(subject)
    jaws = Stay(stay.falls_deg, stay.half_height_mm + JAWS, stay.offset_mm, None)
    return jaws.stretch(placed.on_stay_mm - half, placed.on_stay_mm + half)


def _notes(subject: Subject, beside: _Beside | None) -> Iterator[str]:
    if beside is not None and beside.gap is not None:
        yield NOTE.format(title=subject.findings[beside.gap.rule_id].title, reading=beside.gap.text)
    elif beside is None and subject.word("rear_brake") == "disc":
        yield NOT_MEASURED
