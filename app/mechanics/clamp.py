"""What a torque arm's clamp can reach, as its maker states it: along the bar, beside it, and by turning."""

from __future__ import annotations

from functools import lru_cache
from typing import NamedTuple

from app.catalogue.arm_steps import Between, steps_of, turns
from app.catalogue.hub_parts import TorqueArm
from app.facts.span import Span

KEPT = 256


class Clamp(NamedTuple):
    """The limits of a clamp; None for what the maker doesn't limit or hasn't stated.

    places_mm   holes of the bar, axle to the clamp's middle; empty where it slides from reach to reach
    steps_deg   angles at which the bar can sit, counted from the stay upward; empty where the arm turns
    bearing_deg from where to where the bar of an arm that turns can point, the clamp lying along the stay
    offset_mm   where the stay's centre line may pass, square to the bar of an arm with steps
    """

    reach_from_mm: Span
    reach_to_mm: Span
    half_length_mm: Span
    places_mm: tuple[Span, ...]
    steps_deg: tuple[Span, ...]
    bearing_deg: Between | None
    offset_mm: Between | None
    lateral_mm: Between | None
    width_mm: Between | None
    height_mm: Between | None

    @property
    def turns(self) -> bool:
        """Whether the bar can point at the stay at any angle, and not at some steps alone."""
        return not self.steps_deg

    @property
    def nearest_mm(self) -> Span:
        """The least distance along the bar of the clamp's middle from the axle."""
        return self.places_mm[0] if self.places_mm else self.reach_from_mm + self.half_length_mm

    @property
    def farthest_mm(self) -> Span:
        """The largest distance along the bar of the clamp's middle from the axle."""
        return self.places_mm[-1] if self.places_mm else self.reach_to_mm - self.half_length_mm


def _between(low: Span | None, high: Span | None) -> Between | None:
    return None if low is None or high is None else (low, high)


def _bearings(arm: TorqueArm) -> Between | None:
    """From where to where the bar can point: as far as the arm turns and the clamp swivels against it."""
    if not turns(arm) or arm.index_from_deg is None or arm.index_to_deg is None:
        return None
    swivel = arm.swivel_in_plane_deg
    if swivel is None:
        return arm.index_from_deg, arm.index_to_deg
    return arm.index_from_deg.at_least(-swivel), arm.index_to_deg.at_most(swivel)


@lru_cache(maxsize=KEPT)
def clamp_of(arm: TorqueArm) -> Clamp:
    """The limits that a part of the catalogue states."""
    return Clamp(
        reach_from_mm=arm.reach_from_mm,
        reach_to_mm=arm.reach_to_mm,
        half_length_mm=Span(arm.clamp_length_mm.low // 2, -(-arm.clamp_length_mm.high // 2)),
        places_mm=tuple(sorted(arm.clamp_places_mm, key=lambda place: place.low)),
        steps_deg=steps_of(arm),
        bearing_deg=_bearings(arm),
        offset_mm=_between(arm.offset_low_mm, arm.offset_high_mm),
        lateral_mm=_between(arm.lateral_low_mm, arm.lateral_high_mm),
        width_mm=_between(arm.clamp_width_low_mm, arm.clamp_width_high_mm),
        height_mm=_between(arm.clamp_height_low_mm, arm.clamp_height_high_mm),
    )
