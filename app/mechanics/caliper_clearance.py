"""The gap between a torque arm and a brake caliper, seen from the left and along the axle.

Both bodies are prisms: an outline in the side view that reaches from one axial place to another. They
meet only where they meet in both views, so that the larger of the two gaps is what keeps them apart. It is
never more than the true distance, and below zero exactly where the two are in one place.

Seen from the left the arm is a disc around the axle and a bar that lies along the stay. The caliper is its
nearest point.
"""

from __future__ import annotations

import math

from app.facts.span import Span
from app.mechanics.polar import along, beside

# Far more than sines and roots of lengths on a bike are off, far less than a thousandth of a millimetre.
FLOAT_ERROR_MM = 1e-9


def disc_gap(*, distance_mm: Span, radius_mm: Span) -> Span:
    """From a disc around the axle to a point so far from it, in mm; below zero inside the disc."""
    return distance_mm - radius_mm


def _outside_box(past_end: float, past_side: float) -> float:
    """Distance from a box to a point that lies so far past its nearer end and side; below zero inside."""
    return math.hypot(max(past_end, 0.0), max(past_side, 0.0)) + min(max(past_end, past_side), 0.0)


def bar_gap(*, distance_mm: Span, bearing_deg: Span, half_width_mm: Span, end_mm: Span) -> Span:
    """From the arm's bar to a point, in mm; below zero inside the bar.

    distance_mm, bearing_deg  the point: how far from the axle, and in which direction from the stay upward
    half_width_mm             the bar lies so far to either side of the stay's line
    end_mm                    where the bar ends, from the axle
    """
    x_low, x_high = along(distance_mm, bearing_deg)
    y_low, y_high = beside(distance_mm, bearing_deg)
    end_low, end_high = end_mm.ends
    half_low, half_high = half_width_mm.ends
    off_line_low = max(y_low, -y_high, 0.0)
    off_line_high = max(-y_low, y_high)
    low = _outside_box(max(-x_high, x_low - end_high), off_line_low - half_high)
    high = _outside_box(max(-x_low, x_high - end_low), off_line_high - half_low)
    return Span.outward(low - FLOAT_ERROR_MM, high + FLOAT_ERROR_MM)


def plane_gap(
    *, nearest_mm: Span, bearing_deg: Span, disc_radius_mm: Span, half_width_mm: Span, end_mm: Span
) -> Span:
    """From disc and bar to the caliper's nearest point in the side view, in mm; below zero inside."""
    disc = disc_gap(distance_mm=nearest_mm, radius_mm=disc_radius_mm)
    bar = bar_gap(distance_mm=nearest_mm, bearing_deg=bearing_deg, half_width_mm=half_width_mm, end_mm=end_mm)
    return disc.at_most(bar)


def prism_gap(*, plane_mm: Span, axial_mm: Span) -> Span:
    """What keeps two prisms apart, in mm: the gap in the side view or along the axle, the larger."""
    return plane_mm.at_least(axial_mm)


def spare(*, plane_mm: Span, axial_mm: Span, plane_wanted_mm: Span, axial_wanted_mm: Span) -> Span:
    """How much more room there is than wanted, in mm, in the view that has more of it."""
    return (plane_mm - plane_wanted_mm).at_least(axial_mm - axial_wanted_mm)
