"""The force with which a torque arm holds the axle from turning."""

from __future__ import annotations

import math
from fractions import Fraction

from app.facts.span import THOUSAND, Span


def anchor_force(*, torque_nm: Span, lever_mm: Span) -> Span:
    """Force at the anchor in N, square to the lever: torque over the distance from the axle to the anchor.

    The arm alone carries the torque; the axle's flats and the friction under its nuts are a reserve.
    Source: the balance of moments about the axle. Errors: ValueError unless the lever is longer than nothing.
    """
    if lever_mm.low <= 0:
        message = f"A lever must be longer than 0 mm, not {lever_mm.ends[0]:g}."
        raise ValueError(message)
    # Thousandths cancel; a thousand stays for mm in a metre, and one for thousandths of a newton.
    corners = [
        Fraction(torque * THOUSAND * THOUSAND, lever)
        for torque in (torque_nm.low, torque_nm.high)
        for lever in (lever_mm.low, lever_mm.high)
    ]
    return Span(math.floor(min(corners)), math.ceil(max(corners)))
