"""The stays as lines and sections: how they fall and lean, and how thick one is where it is clamped."""

from __future__ import annotations

import math
from fractions import Fraction

from app.facts.span import THOUSAND, Span

HALF = Fraction(1, 2)


def fall_deg(*, drop_mm: float, length_mm: float) -> float:
    """How steeply a chainstay falls from the axle to cranks so much lower; below zero it rises."""
    return math.degrees(math.asin(drop_mm / length_mm))


def enclosed_deg(*, drop_mm: float, length_mm: float, seat_tube_deg: float, joins_up_mm: float) -> float:
    """The angle at the axle between chainstay and seatstay.

    drop_mm, length_mm          of the chainstay; the cranks lie so much below the axle
    seat_tube_deg, joins_up_mm  the seatstay meets the seat tube so far up it, which leans back from level
    """
    ahead = math.sqrt(length_mm**2 - drop_mm**2)
    lean = math.radians(seat_tube_deg)
    joint_ahead, joint_up = ahead - joins_up_mm * math.cos(lean), joins_up_mm * math.sin(lean) - drop_mm
    rise = math.degrees(math.atan2(joint_up, joint_ahead))
    return rise + fall_deg(drop_mm=drop_mm, length_mm=length_mm)


def toe_in_deg(*, draws_in_mm: Span, length_mm: Span) -> Span:
    """How far a stay turns towards the middle, in degrees: it comes so much nearer over its whole length."""
    (in_low, in_high), (length_low, length_high) = draws_in_mm.ends, length_mm.ends
    return Span.outward(
        math.degrees(math.atan2(in_low, length_high)), math.degrees(math.atan2(in_high, length_low))
    )


def further_on(*, reading_mm: Span, per_mm: Span, read_at_mm: Span, place_mm: Span) -> Span:
    """What was measured at one place of a stay, at another: it grows by so much for each mm of the way.

    Between two places a stay is taken as straight and as tapering evenly.
    """
    way = place_mm - read_at_mm
    grown = [one * other for one in (per_mm.low, per_mm.high) for other in (way.low, way.high)]
    return reading_mm + Span(min(grown) // THOUSAND, -(-max(grown) // THOUSAND))


def per_mm(*, draws_in_mm: Span, length_mm: Span) -> Span:
    """How much nearer to the middle a stay comes for each mm of its length."""
    return Span(
        draws_in_mm.low * THOUSAND // length_mm.high, -(-draws_in_mm.high * THOUSAND // length_mm.low)
    )


def perimeter(*, section: str, width_mm: Span, height_mm: Span) -> Span:
    """The way around a stay, in mm, which is what a band goes around.

    Round and oval after Ramanujan's formula for the ellipse; any other section as the rectangle around it.
    """
    if section in {"round", "oval"}:
        (width_low, width_high), (height_low, height_high) = width_mm.ends, height_mm.ends
        return Span.outward(_ellipse(width_low, height_low), _ellipse(width_high, height_high))
    return (width_mm + height_mm).times(2)


def _ellipse(width: float, height: float) -> float:
    p, q = width / 2, height / 2
    return math.pi * (3 * (p + q) - math.sqrt((3 * p + q) * (p + 3 * q)))


def band_diameter(perimeter_mm: Span) -> Span:
    """The diameter of a round band that goes once around, in mm: how bands are sold."""
    low, high = perimeter_mm.ends
    return Span.outward(low / math.pi, high / math.pi)
