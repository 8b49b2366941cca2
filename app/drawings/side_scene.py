"""What is seen of a rear end from the left, in mm, ready to be drawn.

Places are those of the side plane: the axle's centre at the origin, x along the left chainstay towards the
cranks, y towards the seatstay.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

import shapely
from shapely.geometry.base import BaseGeometry

from app.drawings.svg import Point
from app.mechanics.plane import NOTHING


@dataclass(frozen=True, slots=True)
class Gap:
    """A gap where it is narrowest: from where to where in mm, and its number as a finding says it.

    plane, axial   the least that it can be seen from the left and along the axle, below zero for overlaps
    """

    rule_id: str
    start: Point
    end: Point
    text: str
    plane: float
    axial: float

    @property
    def is_in_plane(self) -> bool:
        """Whether the number is that of the side view."""
        return self.axial <= 0 < self.plane or self.axial <= self.plane <= 0

    @property
    def overlap(self) -> bool:
        """Whether the two are in one place."""
        return self.plane <= 0 and self.axial <= 0


@dataclass(frozen=True, slots=True)
class Stay:
    """The left chainstay as a straight bar: how it falls, its height, and the stretch that is free."""

    falls_deg: float
    half_height_mm: float
    offset_mm: float
    free_mm: tuple[float, float] | None

    def stretch(self, start: float, end: float) -> BaseGeometry:
        """The part of it between two distances from the axle."""
        return shapely.box(
            start, self.offset_mm - self.half_height_mm, end, self.offset_mm + self.half_height_mm
        )


@dataclass(frozen=True, slots=True)
class Caliper:
    """A caliper: where it may reach, where it counts as being, and the points of it that were measured."""

    possible: BaseGeometry
    sure: BaseGeometry
    measured: tuple[Point, ...] = ()


@dataclass(frozen=True, slots=True)
class SideScene:
    """Everything that the side view shows; what a bike hasn't got is None or empty.

    clamp   the stretch of stay that the clamp covers, with the jaws around it
    notes   sentences for those who don't see the drawing, each with its numbers
    remark  what is to be read under it
    """

    stay: Stay
    rotor_radius_mm: float | None = None
    caliper: Caliper | None = None
    arm: BaseGeometry = NOTHING
    clamp: BaseGeometry = NOTHING
    gap: Gap | None = None
    notes: tuple[str, ...] = ()
    remark: str = ""

    def shapes(self) -> Iterator[BaseGeometry]:
        """The shapes that decide how much has to be seen."""
        yield from (self.arm, self.clamp)
        if self.caliper is not None:
            yield from (self.caliper.possible, self.caliper.sure)
