"""What holds an axle without its arm: two flats in a slot, and the friction under its nuts.

Both are a reserve. Nothing here counts on them; the sums show how much or how little they are.
"""

from __future__ import annotations

import math
from fractions import Fraction
from typing import Literal, TypeAlias

from app.facts.span import THOUSAND, Span

Contact: TypeAlias = Literal["edges", "triangle", "half_flats"]

# The pair of forces that a torque makes of the chord, by how the pressure spreads along the flats. Derived.
SPREAD: dict[Contact, Fraction] = {
    "edges": Fraction(1),
    "triangle": Fraction(3, 2),
    "half_flats": Fraction(2),
}
PEAK = 6
# Common practice for dry, unplated threads and faces: torque over load and diameter, and friction.
NUT_FACTOR = Fraction(1, 5)
FRICTION = Fraction(15, 100)
FACES = 2


def flat_chord(*, diameter_mm: Span, across_flats_mm: Span) -> Span:
    """Length of a flat seen along the axle, in mm: the chord that is left at that distance across.

    Errors: ValueError where the flats are as far apart as the axle is thick, or farther.
    """
    low, high = _chord_squared(diameter_mm, across_flats_mm)
    return Span(math.isqrt(low), math.isqrt(high - 1) + 1)


def _chord_squared(diameter: Span, across: Span) -> tuple[int, int]:
    """In millionths of mm², exact."""
    if across.high >= diameter.low:
        message = f"Flats {across.ends[1]:g} mm apart leave nothing of an axle of {diameter.ends[0]:g} mm."
        raise ValueError(message)
    return diameter.low**2 - across.high**2, diameter.high**2 - across.low**2


def flat_force(*, torque_nm: Span, chord_mm: Span, contact: Contact) -> Span:
    """The force in N with which each flat pushes a slot apart, for the torque that one dropout takes.

    On the edges alone it is least: torque over chord. Derived.
    """
    share = SPREAD[contact] * THOUSAND * THOUSAND
    low = Fraction(torque_nm.low * share, chord_mm.high)
    return Span(math.floor(low), math.ceil(Fraction(torque_nm.high * share, chord_mm.low)))


def flat_pressure(*, torque_nm: Span, diameter_mm: Span, across_flats_mm: Span, thickness_mm: Span) -> Span:
    """The largest pressure in MPa between a flat and its slot, rising from nothing at the middle to the edge.

    Derived: six times the torque that one dropout takes, over the chord's square and the plate's thickness.
    """
    chord_low, chord_high = _chord_squared(diameter_mm, across_flats_mm)
    # Thousandths of N·m are N·mm; mm in thousandths, squared and once more, are 10**9 to the mm³.
    scale = PEAK * THOUSAND**4
    low = torque_nm.low * scale // (chord_high * thickness_mm.high)
    return Span(low, -(-torque_nm.high * scale // (chord_low * thickness_mm.low)))


def bolt_load(*, torque_nm: Span, thread_mm: Span) -> Span:
    """The force in N that a nut or bolt presses with when it is tightened dry. Common practice, K = 0.2."""
    low = Fraction(torque_nm.low * THOUSAND * THOUSAND, thread_mm.high) / NUT_FACTOR
    high = Fraction(torque_nm.high * THOUSAND * THOUSAND, thread_mm.low) / NUT_FACTOR
    return Span(math.floor(low), math.ceil(high))


def friction_torque(*, load_n: Span, radius_mm: Span) -> Span:
    """The torque in N·m that a dropout holds between nut and locknut: two faces, at their mean radius."""
    share = FACES * FRICTION / (THOUSAND * THOUSAND)
    return Span(
        math.floor(load_n.low * radius_mm.low * share), math.ceil(load_n.high * radius_mm.high * share)
    )
