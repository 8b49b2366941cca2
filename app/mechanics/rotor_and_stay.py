"""Rotor and motor shell beside the left chainstay, which leans in from the dropout towards the cranks.

Places run inboard in mm from the left dropout's innermost face.
"""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction
from functools import reduce
from typing import NamedTuple

from app.catalogue.along_axle import ShellStep
from app.facts.span import Span
from app.mechanics.stays import further_on

HALF = Fraction(1, 2)


class LeftStay(NamedTuple):
    """The stay as it was measured: its middle and its width at a place that is known only so well.

    leans_in    how much further in it lies for each mm along it
    read_at_mm  from the axle to the place of the measurement
    """

    lateral_mm: Span
    width_mm: Span
    leans_in: Span
    read_at_mm: Span

    def skin_at(self, from_axle_mm: Span) -> Span:
        """Where its inner skin is, so far from the axle."""
        middle = further_on(
            reading_mm=self.lateral_mm,
            per_mm=self.leans_in,
            read_at_mm=self.read_at_mm,
            place_mm=from_axle_mm,
        )
        return middle + self.width_mm.times(HALF)


def rotor_to_stay(
    *, stay: LeftStay, seat_mm: Span, rotor_thickness_mm: Span, rotor_diameter_mm: Span
) -> Span:
    """From the stay's inner skin to the rotor's outer face at its edge, in mm; below zero where they overlap.

    seat_mm  the face that the rotor lies on: its inner face
    """
    return seat_mm - rotor_thickness_mm - stay.skin_at(rotor_diameter_mm.times(HALF))


def shell_to_stay(*, stay: LeftStay, steps: Sequence[ShellStep], shell_mm: Span) -> Span:
    """From the stay's inner skin to the nearest step of the motor shell, each taken at its edge, in mm.

    shell_mm  the shell's left face
    """
    rooms = [shell_mm + step.inboard_mm - stay.skin_at(step.radius_mm) for step in steps]
    return reduce(Span.at_most, rooms)
