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
from app.mechanics.caliper_envelope import Readings, caliper
from app.mechanics.placement import Placement
from app.mechanics.plane import NOTHING, Point, at, turned
from app.report.numbers import span_text
from app.rules.brake.caliper_readings import near_readings, tables_of, whole_readings
from app.rules.torque_arm.best_place import best_place

# In degrees and mm, where nobody measured: how a stay falls, half its height; and a clamp's jaws.
USUAL_FALL, USUAL_HALF_HEIGHT, JAWS = 7.0, 9.0, 4.0
# A caliper that may be anywhere in so much room isn't known well enough to be drawn.
MOST_ROOM_MM2 = 26_000.0
# In mm: pieces so near are one, and two gaps that differ by less than is printed are one.
NEARLY_TOUCH, SAME_GAP = 4.0, 0.05
NOTHING_WANTED = Span(0, 0)
MEASURED_POINTS = (
    ("caliper_nearest_mm", "caliper_bearing_deg"),
    ("caliper_far_mm", "caliper_far_bearing_deg"),
)
# Whose number a gap is that is no finding's: that of the place where the arm is best clamped.
BEST_PLACE = "best-place"
PLACED = "Best clamped {place} from the axle, the arm at {bearing} to the stay."
THERE = "The gap between arm and caliper there"
NOTE = "{title}: {reading}."
ONLY_POINTS = "Of a caliper on a flat mount no more is known than its measured points."
NOT_MEASURED = "The caliper isn't measured closely enough to be drawn."


def side_of(subject: Subject) -> SideScene:
    """Everything that is known of the left side."""
    bike = _bike(subject)
    readings = _readings(subject, bike)
    place = _place(subject, bike)
    bearing_deg = _bearing(subject, readings, place)
    beside = None if readings is None else _beside(subject, readings, bearing_deg, place)
    rotor = subject.span("rotor_diameter_mm") if subject.word("rear_brake") == "disc" else None
    return SideScene(
        stay=_stay(subject),
        rotor_radius_mm=None if rotor is None else middle_of(rotor) / 2,
        caliper=beside.caliper if beside else None,
        arm=turned(outline_with_holes(subject.torque_arm), bearing_deg),
        clamp=NOTHING if place is None else _clamp(subject, place),
        gap=beside.gap if beside else None,
        notes=tuple(_notes(subject, beside)),
        remark=" ".join(_remarks(subject, beside, place)),
    )


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


def _place(subject: Subject, bike: Bike) -> Placement | None:
    """The place that suits all limits of the clamp best; None without a clamp, or too little known."""
    if subject.reading("arm_reach") is None:
        return None
    return best_place(bike, subject.torque_arm, subject.standards)


def _bearing(subject: Subject, readings: Readings | None, place: Placement | None) -> float:
    """Where the bar points: as it is best clamped, as it clears the caliper best, or along the stay."""
    if place is not None:
        return middle_of(place.bar_bearing_deg)
    arm, angles = measures_of(subject.torque_arm), index_angles(subject.torque_arm)
    if readings is None:
        return min(angles, key=abs)
    return clearance(arm, angles, readings, tables_of(subject.standards)).index_deg


def _beside(
    subject: Subject, readings: Readings, bearing_deg: float, place: Placement | None
) -> _Beside | None:
    """The caliper, unless it may be nearly anywhere."""
    known = caliper(readings, tables_of(subject.standards))
    possible = shapely.union_all([body.outer for body in known.bodies])
    if possible.area > MOST_ROOM_MM2:
        return None
    sure = shapely.union_all([body.inner for body in (*known.bodies, *known.sure)])
    near = narrowest(arm_body(measures_of(subject.torque_arm), bearing_deg), known.bodies)
    reading = _gap_reading(subject, place)
    gap = None
    if near is not None and reading is not None:
        gap = Gap(reading.rule_id, near.start, near.end, reading.text, near.plane, near.axial)
    return _Beside(Caliper(possible, _whole(sure, possible), tuple(_measured(subject))), gap)


def _measured(subject: Subject) -> Iterator[Point]:
    """The points of the caliper that somebody measured."""
    for distance, bearing in MEASURED_POINTS:
        far, towards = subject.span(distance), subject.span(bearing)
        if far is not None and towards is not None:
            yield at(middle_of(far), middle_of(towards))


def _whole(sure: BaseGeometry, possible: BaseGeometry) -> BaseGeometry:
    """The pieces of a caliper drawn as one: between two that nearly touch there is no gap in the metal."""
    closed = sure.buffer(NEARLY_TOUCH, join_style="mitre").buffer(-NEARLY_TOUCH, join_style="mitre")
    return shapely.intersection(closed, possible)


def _gap_reading(subject: Subject, place: Placement | None) -> Reading | None:
    """The number of the gap: as a finding has it, or where it is another one, as it is in the best place."""
    best = subject.reading("arm_caliper_far") or subject.reading("arm_caliper")
    spare = dict(place.margins_mm).get("caliper") if place else None
    if best is None or spare is None:
        return best
    gap = spare + (subject.torque_arm.clearance_mm or NOTHING_WANTED)
    low, high = gap.ends
    if abs(low - best.low) < SAME_GAP and abs(high - best.high) < SAME_GAP:
        return best
    return Reading(BEST_PLACE, low, high, span_text(gap, "mm"))


def _stay(subject: Subject) -> Stay:
    is_round = subject.word("stay_section") == "round"
    height = subject.middle("stay_width_mm" if is_round else "stay_height_mm", 2 * USUAL_HALF_HEIGHT)
    start, end = subject.span("stay_clear_from_mm"), subject.span("stay_clear_to_mm")
    free = None if start is None or end is None else (start.ends[1], end.ends[0])
    falls = subject.middle("stay_angle_deg", USUAL_FALL)
    return Stay(falls, height / 2, subject.middle("stay_offset_mm", 0.0), free)


def _clamp(subject: Subject, place: Placement) -> BaseGeometry:
    """The clamp around the stay."""
    middle, half, stay = middle_of(place.on_stay_mm), middle_of(place.half_length_mm), _stay(subject)
    jaws = Stay(stay.falls_deg, stay.half_height_mm + JAWS, stay.offset_mm, None)
    return jaws.stretch(middle - half, middle + half)


def _notes(subject: Subject, beside: _Beside | None) -> Iterator[str]:
    if beside is not None and beside.gap is not None:
        finding = subject.findings.get(beside.gap.rule_id)
        title = THERE if finding is None else finding.title
        yield NOTE.format(title=title, reading=beside.gap.text)


def _remarks(subject: Subject, beside: _Beside | None, place: Placement | None) -> Iterator[str]:
    if place is not None:
        where = span_text(place.along_arm_mm, "mm"), span_text(place.bar_bearing_deg, "°")
        yield PLACED.format(place=where[0], bearing=where[1])
    if beside is None and subject.word("rear_brake") == "disc":
        yield NOT_MEASURED
    elif beside is not None and subject.word("caliper_mount") == "flat":
        yield ONLY_POINTS
