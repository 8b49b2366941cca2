"""How far above or below the axle a stay may pass for a torque arm that sits on it at steps.

Each step turns the bar up or down, and the clamp reaches to either side of the bar; a bar that points up
reaches a stay that passes above the axle.
"""

from __future__ import annotations

import math
from fractions import Fraction
from typing import TypeAlias

from app.catalogue.hub_parts import TorqueArm
from app.facts.span import THOUSAND, Span

# The least and the most, each with its own tolerance.
Between: TypeAlias = tuple[Span, Span]

STRAIGHT = (Span(0, 0),)
HALF = Fraction(1, 2)
TENTH = 100


def turns(arm: TorqueArm) -> bool:
    """Whether an arm turns on the axle to meet the stay, and has no steps for it."""
    return arm.index_from_deg is not None and not arm.index_angles_deg


def steps_of(arm: TorqueArm) -> tuple[Span, ...]:
    """The steps that the clamp's swivel doesn't rule out; none for an arm that turns."""
    if turns(arm):
        return ()
    steps, swivel = arm.index_angles_deg or STRAIGHT, arm.swivel_in_plane_deg
    return tuple(step for step in steps if swivel is None or abs(step).low <= swivel.high) or STRAIGHT


def offsets_taken(arm: TorqueArm) -> Between | None:
    """Between which heights beside the axle it meets a stay, over all its steps; None where not stated."""
    taken = _by_step(arm)
    if not taken:
        return None
    lows, highs = [low for low, _ in taken], [high for _, high in taken]
    return (
        Span(min(span.low for span in lows), min(span.high for span in lows)),
        Span(max(span.low for span in highs), max(span.high for span in highs)),
    )


def leaves_a_gap(arm: TorqueArm) -> bool:
    """Whether a stay can pass between what two neighbouring steps reach."""
    ranges = sorted((low.high, high.low) for low, high in _by_step(arm))
    reached = ranges[0][1] if ranges else 0
    for low, high in ranges:
        if low > reached:
            return True
        reached = max(reached, high)
    return False


def _by_step(arm: TorqueArm) -> list[Between]:
    low, high = arm.offset_low_mm, arm.offset_high_mm
    if low is None or high is None:
        return []
    half = arm.clamp_length_mm.times(HALF)
    reach = arm.reach_from_mm.low + half.low, arm.reach_to_mm.high - half.low
    return [_at_step((low, high), reach, step.low / THOUSAND) for step in steps_of(arm)]


def _at_step(throw: Between, reach: tuple[int, int], step_deg: float) -> Between:
    """What one step reaches: the clamp's own reach to the side, and the bar's rise at the better place."""
    if step_deg == 0:
        return throw
    rise, square = math.sin(math.radians(step_deg)), math.cos(math.radians(step_deg))
    near, far = sorted(place * rise for place in reach)
    return (
        Span(_tenth(throw[0].low * square + near), _tenth(throw[0].high * square + near)),
        Span(_tenth(throw[1].low * square + far), _tenth(throw[1].high * square + far)),
    )


def _tenth(thousandths: float) -> int:
    """The nearest tenth of a millimetre: an arm is not made closer than that."""
    return round(thousandths / TENTH) * TENTH
