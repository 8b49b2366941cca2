"""The torque arm seen from the left: its outline, the angles at which it sits on the axle, and its body."""

from __future__ import annotations

import math
from collections.abc import Sequence
from functools import lru_cache
from typing import NamedTuple, cast

import shapely
from shapely import Polygon

from app.catalogue.hub_parts import TorqueArm
from app.catalogue.outline import Corner
from app.facts.span import THOUSAND, Span
from app.mechanics.plane import Body, round_inside, round_outside, turned

STRAIGHT: tuple[float, ...] = (0.0,)
CENTRE = (0.0, 0.0)
KEPT_ARMS = 256


class ArmMeasures(NamedTuple):
    """What the shape of an arm depends on, and nothing else of the part: what it is remembered by."""

    disc_radius_mm: Span
    bar_half_width_mm: Span
    reach_to_mm: Span
    outer_face_mm: Span
    inner_face_mm: Span
    outline: tuple[Corner, ...]


def measures_of(arm: TorqueArm) -> ArmMeasures:
    """The measures of a part of the catalogue."""
    return ArmMeasures(
        arm.disc_radius_mm,
        arm.bar_half_width_mm,
        arm.reach_to_mm,
        arm.outer_face_mm,
        arm.inner_face_mm,
        arm.outline,
    )


def index_angles(arm: TorqueArm) -> tuple[float, ...]:
    """The angles at which the arm can sit: its steps, or whole degrees where it turns freely.

    An arm that names none sits with its bar along the stay.
    """
    if arm.index_angles_deg:
        return tuple(angle.ends[0] for angle in arm.index_angles_deg)
    if arm.index_from_deg is None or arm.index_to_deg is None:
        return STRAIGHT
    first, last = arm.index_from_deg.high / THOUSAND, arm.index_to_deg.low / THOUSAND
    whole = tuple(float(degrees) for degrees in range(math.ceil(first), math.floor(last) + 1))
    return whole or (first,)


def outline_with_holes(arm: TorqueArm) -> Polygon:
    """The arm as it is cut, at index angle 0: for drawings and for the gauge on paper."""
    radius = (arm.disc_radius_mm.low + arm.disc_radius_mm.high) / 2 / THOUSAND
    measures = measures_of(arm)
    end, half = _middle(measures.reach_to_mm), _middle(measures.bar_half_width_mm)
    whole = shapely.union(round_outside(CENTRE, radius), _bar(measures.outline, end, half))
    holes = [shapely.polygons(_corners(hole)) for hole in arm.holes]
    return cast("Polygon", shapely.difference(whole, shapely.union_all(holes)) if holes else whole)


@lru_cache(maxsize=KEPT_ARMS)
def arm_body(measures: ArmMeasures, index_deg: float) -> Body:
    """The arm as a prism, turned to one of its index angles. What lies in a hole counts as in the arm."""
    outer, inner = _outlines(measures)
    return Body(
        "arm",
        turned(outer, index_deg),
        turned(inner, index_deg),
        (measures.outer_face_mm.ends[0], measures.inner_face_mm.ends[1]),
        (measures.outer_face_mm.ends[1], measures.inner_face_mm.ends[0]),
    )


@lru_cache(maxsize=KEPT_ARMS)
def _outlines(measures: ArmMeasures) -> tuple[Polygon, Polygon]:
    """The largest and the smallest that the arm can be at index angle 0."""
    radius, half, end = measures.disc_radius_mm, measures.bar_half_width_mm, measures.reach_to_mm
    largest = shapely.union(
        round_outside(CENTRE, radius.ends[1]), _bar(measures.outline, end.ends[1], half.ends[1])
    )
    smallest = shapely.union(
        round_inside(CENTRE, radius.ends[0]), _bar(measures.outline, end.ends[0], half.ends[0])
    )
    return cast("Polygon", largest), cast("Polygon", smallest)


def _middle(span: Span) -> float:
    return (span.low + span.high) / 2 / THOUSAND


def _corners(outline: Sequence[Corner]) -> list[tuple[float, float]]:
    return [(along.low / THOUSAND, beside.low / THOUSAND) for along, beside in outline]


def _bar(outline: Sequence[Corner], end: float, half_width: float) -> Polygon:
    """The outline itself; a straight bar from the axle's centre where a part has none."""
    if outline:
        return Polygon(_corners(outline))
    return Polygon([(0, -half_width), (end, -half_width), (end, half_width), (0, half_width)])
