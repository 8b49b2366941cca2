"""Whether the clamp reaches the stay at an angle of the arm at which its bar clears the brake caliper.

The gap is known at each whole degree, or at each step. An arm that turns points at the stay wherever its
clamp is, mostly at an angle in between: the gap there may be less or more by as far as the bar moves.
"""

from __future__ import annotations

import math

import numpy as np
import shapely

from app.facts.span import Span
from app.mechanics.arm_beside_caliper import MOST_WANTED_MM, Angles, at_each_angle, clearance
from app.mechanics.arm_outline import ArmMeasures, arm_body
from app.mechanics.arm_place import Choices, Margins
from app.mechanics.caliper_envelope import Readings, caliper
from app.mechanics.caliper_solids import Tables
from app.mechanics.plane import Body
from app.mechanics.ranges import Ranges, Values

HALF_A_DEGREE = math.radians(0.5)


def _reach(body: Body) -> float:
    """How far from the axle a body's farthest point may be."""
    corners = shapely.get_coordinates(body.outer)
    return float(np.hypot(*corners.T).max(initial=0.0))


def _moves(arm: ArmMeasures, readings: Readings, tables: Tables) -> float:
    """How far a point of the arm beside the caliper moves in half a degree, at most, in mm."""
    beside = max(_reach(body) for body in caliper(readings, tables).bodies) + MOST_WANTED_MM
    return min(_reach(arm_body(arm, 0.0)), beside) * HALF_A_DEGREE


def _over(values: Values, first: Values, last: Values, *, least: bool) -> Values:
    """For each choice the least or the largest of the values from its first to its last place."""
    running = np.minimum if least else np.maximum
    table = np.array(
        [np.concatenate((values[:at], running.accumulate(values[at:]))) for at in range(len(values))]
    )
    found: Values = table[first.astype(int), last.astype(int)]
    return found


def _gaps(gaps: Ranges, angles: Angles, chosen: Choices, moves: float) -> Ranges:
    """The gap at the bearing of each choice, which may be any from low to high."""
    ends = [np.clip(np.rint(end - angles[0]), 0, len(angles) - 1) for end in chosen.bearing_deg]
    low_deg, high_deg = chosen.bearing_deg
    off = np.where((low_deg == high_deg) & (low_deg == np.rint(low_deg)), 0.0, moves)
    low, high = _over(gaps.low, *ends, least=True), _over(gaps.high, *ends, least=False)
    # An overlap is as wide as a disc, and both its sides move.
    twice = 2 * off
    least = np.where(low < off, low - twice, low - off)
    return Ranges(least, np.where(high < 0, high + twice, np.maximum(high + off, twice)))


def _at_steps(gaps: Ranges, angles: Angles, chosen: Choices) -> Ranges:
    """The gap at the step of each choice."""
    at = np.abs(chosen.bearing_deg.low[:, None] - np.array(angles)).argmin(axis=1)
    return Ranges(gaps.low[at], gaps.high[at])


def with_caliper(
    margins: Margins, *, arm: ArmMeasures, angles: Angles, readings: Readings, tables: Tables, wanted_mm: Span
) -> Margins:
    """The margins of a clamp, with what the arm has to spare beside the caliper at each choice.

    wanted_mm   the gap that the arm's maker wants, or nothing
    """
    gaps = at_each_angle(arm, angles, readings, tables)
    if margins.sure.aside_mm is None:
        moves = _moves(arm, readings, tables)
        sure, possible = (_gaps(gaps, angles, each, moves) for each in (margins.sure, margins.possible))
    else:
        sure = possible = _at_steps(gaps, angles, margins.sure)
    row = Ranges(sure.low, possible.high).less(Ranges.of(wanted_mm))
    alone = Ranges.of(clearance(arm, angles, readings, tables).gap_mm - wanted_mm)
    return margins.and_also("caliper", row, alone)
