"""The dimensions of the axle section: what the findings read along the axle, between the places they mean."""

from __future__ import annotations

import math
from collections.abc import Iterator
from typing import NamedTuple

from app.catalogue.along_axle import ShellStep
from app.drawings.axle_scene import Level
from app.drawings.subject import Reading, Subject, middle_of
from app.mechanics.axle_rows import Faces
from app.mechanics.cogs_beside import cog_radius_mm
from app.mechanics.shell_profile import steps_of

# In mm: a rotor that runs so near to its old plane needs no dimension; radii at which two of them stand.
IN_PLANE, AT_ROTOR, AT_PLATE = 0.5, 36.0, 24.0
# Two lengths that differ by less are the same but for rounding.
SAME = 0.002


def levels_of(subject: Subject, faces: Faces) -> Iterator[Level]:
    """Every dimension, those of the left first, the whole width last."""
    yield from _arm(subject)
    yield from _rotor(subject)
    yield from _shell(subject, faces)
    yield from _smallest_cog(subject, faces)
    yield from _width(subject, faces)


def _level(reading: Reading, start: tuple[float, float], end: tuple[float, float]) -> Level:
    return Level(reading.rule_id, start, end, reading.text)


def _arm(subject: Subject) -> Iterator[Level]:
    """From arm to caliper, where it is along the axle alone that they are apart."""
    reading = subject.reading("arm_caliper")
    rotor, depth = subject.span("rotor_offset_mm"), subject.span("caliper_outboard_depth_mm")
    nearest = subject.span("caliper_nearest_mm")
    if reading is None or rotor is None or depth is None or nearest is None:
        return
    arm, caliper = subject.torque_arm.inner_face_mm.ends[1], (rotor - depth).ends[0]
    if reading.low > 0 and abs(caliper - arm - reading.low) < SAME:
        yield _level(reading, (arm, subject.torque_arm.disc_radius_mm.ends[1]), (caliper, nearest.ends[0]))


def _rotor(subject: Subject) -> Iterator[Level]:
    """From the plane in which the caliper stands to the one in which the rotor runs."""
    reading, old = subject.reading("rotor_plane"), subject.span("rotor_offset_mm")
    if reading is None or old is None or abs(reading.middle) < IN_PLANE:
        return
    start = middle_of(old)
    yield _level(reading, (start, AT_ROTOR), (start + reading.middle, AT_ROTOR))


class _Corner(NamedTuple):
    """A step of the shell, and how far it is from the caliper across the axle and along it."""

    step: ShellStep
    across: float
    along: float

    @property
    def gap(self) -> float:
        """The slanting distance where they are apart in both directions, else the larger of the two."""
        if self.across > 0 and self.along > 0:
            return math.hypot(self.across, self.along)
        return max(self.across, self.along)


def _shell(subject: Subject, faces: Faces) -> Iterator[Level]:
    """From the caliper's inner half to the nearest step of the shell, as near as they may come."""
    reading, rotor = subject.reading("shell_caliper"), subject.span("rotor_offset_mm")
    depth, nearest = subject.span("caliper_inboard_depth_mm"), subject.span("caliper_inboard_nearest_mm")
    if reading is None or rotor is None or depth is None or nearest is None or faces.shell_left_mm is None:
        return
    shell = faces.shell_left_mm.ends[0]
    caliper, lowest = (rotor + depth).ends[1], nearest.ends[0]
    corners = [
        _Corner(step, lowest - step.radius_mm.ends[1], shell + step.inboard_mm.ends[0] - caliper)
        for step in steps_of(subject.hub)
    ]
    step, across, along = min(corners, key=lambda corner: corner.gap)
    radius, face = step.radius_mm.ends[1], shell + step.inboard_mm.ends[0]
    if across <= 0 and along >= across:
        yield _level(reading, (caliper, lowest), (face, lowest))
    else:
        end = (face if along > 0 else caliper, radius)
        yield Level(reading.rule_id, (caliper, lowest), end, reading.text, is_level=False)


def _smallest_cog(subject: Subject, faces: Faces) -> Iterator[Level]:
    """From the smallest cog to the drive-side dropout, where that is short enough to matter."""
    reading, cog = subject.reading("cog_beside_dropout"), subject.freehub.smallest_cog_face_mm
    teeth = subject.span("smallest_cog")
    if reading is None or cog is None or teeth is None or faces.shell_right_mm is None:
        return
    start = middle_of(faces.shell_right_mm + cog)
    radius = cog_radius_mm(teeth).ends[1]
    yield _level(reading, (start, radius), (start + reading.middle, AT_PLATE))


def _width(subject: Subject, faces: Faces) -> Iterator[Level]:
    """From floor to floor of the frame as it is, which a hub may not match."""
    reading = subject.reading("dropout_width")
    if reading is not None:
        left = middle_of(faces.left_floor_mm)
        yield _level(reading, (left, 0), (left + reading.middle, 0))
