"""Whether the clamp reaches the stay at an angle of the arm at which its bar clears the brake caliper.

The gap is known at each whole degree, or at each step. An arm that turns points at the stay wherever its
clamp is, mostly at an angle in between: the gap there may be less or more by as far as the bar moves.
"""

from __future__ import annotations

import math
from functools import lru_cache

import numpy as np
import shapely

from app.facts.span import Span
from app.mechanics.arm_beside_caliper import MOST_WANTED_MM, Angles, at_each_angle
from app.mechanics.arm_outline import ArmMeasures, arm_body
from app.mechanics.arm_place import Margins
from app.mechanics.caliper_envelope import Readings, caliper
from app.mechanics.caliper_solids import Tables
from app.mechanics.clamp_choices import Choices
from app.mechanics.plane import Body
from app.mechanics.ranges import Ranges, Values

HALF_A_DEGREE = math.radians(0.5)
KEPT = 64


def _reach(body: Body) -> float:
    """How far from the axle a body's farthest point may be."""
    corners = shapely.get_coordinates(body.outer)
    return float(np.hypot(*corners.T).max(initial=0.0))


@lru_cache(maxsize=KEPT)
def _arm_reach(arm: ArmMeasures) -> float:
    return _reach(arm_body(arm, 0.0))


@lru_cache(maxsize=KEPT)
def _caliper_reach(readings: Readings, tables: Tables) -> float:
    return max(_reach(body) for body in caliper(readings, tables).bodies)


def _moves(arm: ArmMeasures, readings: Readings, tables: Tables) -> float:
    """How far a point of the arm beside the caliper moves in half a degree, at most, in mm."""
    beside = _caliper_reach(readings, tables) + MOST_WANTED_MM
    return min(_arm_reach(arm), beside) * HALF_A_DEGREE


def _over(values: Values, chosen: Choices, first_deg: float, *, least: bool) -> Values:
    """For each choice the least or the largest of the values at the whole degrees around its bearing."""
    first, last = (
        np.clip(np.rint(end - first_deg), 0, len(values) - 1).astype(int) for end in chosen.bearing_deg
    )
    folded = np.minimum if least else np.maximum
    ends = np.column_stack((first, last + 1)).ravel()
    found: Values = folded.reduceat(np.append(values, values[-1]), ends)[::2]
    return found


def _between(chosen: Choices, moves: float) -> Values:
    """How far off a whole degree each choice may be, in mm of the bar's move."""
    low, high = chosen.bearing_deg
    return np.where((low == high) & (low == np.rint(low)), 0.0, moves)


def _row(gaps: Ranges, first_deg: float, margins: Margins, moves: float) -> Ranges:
    """The gap at the bearing of each choice. An overlap is as wide as a disc, and both its sides move."""
    low, off = _over(gaps.low, margins.sure, first_deg, least=True), _between(margins.sure, moves)
    worst = np.where(low < off, low - 2 * off, low - off)
    high, off = _over(gaps.high, margins.possible, first_deg, least=False), _between(margins.possible, moves)
    return Ranges(worst, np.where(high < 0, high + 2 * off, np.maximum(high + off, 2 * off)))


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
        row = _row(gaps, angles[0], margins, _moves(arm, readings, tables))
    else:
        row = _at_steps(gaps, angles, margins.sure)
    alone = Ranges(gaps.low.max(keepdims=True), gaps.high.max(keepdims=True))
    return margins.and_also("caliper", row.less(wanted_mm), alone.less(wanted_mm))
