"""The one place of a torque arm's clamp that a mechanic is told: where it goes, and what it goes around."""

from __future__ import annotations

from dataclasses import dataclass

from app.catalogue.standards import Standards
from app.facts.bike import Bike
from app.facts.span import Span
from app.mechanics.arm_place import Margins, Stay, span_at
from app.mechanics.clamp import Clamp
from app.mechanics.prism_gap import Room
from app.mechanics.stays import band_diameter, further_on, per_mm, perimeter


@dataclass(frozen=True, slots=True)
class Placement:
    """The best place of a clamp, all lengths in mm.

    along_arm_mm, on_stay_mm   the clamp's middle, from the axle along the bar and along the stay
    half_length_mm             the clamp covers so much of the stay to either side of it
    bar_bearing_deg            from the stay up to the bar; the clamp swivels against it by as much
    toe_in_deg                 the clamp's swivel against the bar, seen from above
    aside_mm                   off the bar, square to it; None for an arm that turns to the stay
    lateral_mm                 the stay's centre there, inboard of the dropout's inner face
    width_mm, height_mm        of the stay there; around_mm is the way around it, band_mm the band's size
    margins_mm                 what each limit has in hand there, from worst to best
    tightest                   the limit that has least
    """

    along_arm_mm: Span
    on_stay_mm: Span
    half_length_mm: Span
    bar_bearing_deg: Span
    toe_in_deg: Span
    aside_mm: Span | None
    lateral_mm: Span
    width_mm: Span
    height_mm: Span
    around_mm: Span
    band_mm: Span
    margins_mm: tuple[tuple[str, Span], ...]
    tightest: str


def stay_of(bike: Bike, standards: Standards) -> Stay:
    """The stay of a bike that shows every fact about it; a round one is as high as it is wide."""
    width = bike.stay_width_mm
    return Stay(
        offset_mm=bike.stay_offset_mm,
        lateral_mm=bike.stay_lateral_mm,
        clear_from_mm=bike.stay_clear_from_mm,
        clear_to_mm=bike.stay_clear_to_mm,
        width_mm=width,
        height_mm=width if bike.stay_section == "round" else bike.stay_height_mm,
        read_at_mm=standards.limit("stay_read_at_mm").value,
        inward_per_mm=inward_per_mm(bike.chainstay_length_mm, standards),
        taper_per_mm=standards.limit("stay_taper").value,
    )


def inward_per_mm(chainstay_length_mm: Span, standards: Standards) -> Span:
    """How much nearer to the middle a stay of this length comes for each mm."""
    return per_mm(draws_in_mm=standards.limit("stay_draws_in_mm").value, length_mm=chainstay_length_mm)


def placement_of(clamp: Clamp, stay: Stay, margins: Margins, *, section: str, toe_in: Span) -> Placement:
    """The best place by these margins."""
    at = margins.choice()
    chosen = margins.sure
    on_stay = span_at(chosen.stay_mm, at)
    lateral, width, height = (
        further_on(reading_mm=reading, per_mm=grows, read_at_mm=stay.read_at_mm, place_mm=on_stay)
        for reading, grows in (
            (stay.lateral_mm, stay.inward_per_mm),
            (stay.width_mm, stay.taper_per_mm),
            (stay.height_mm, stay.taper_per_mm),
        )
    )
    around = perimeter(section=section, width_mm=width, height_mm=height)
    in_hand = zip(margins.names, margins.hand.low[:, at], margins.hand.high[:, at], strict=True)
    return Placement(
        along_arm_mm=span_at(chosen.along_mm, at),
        on_stay_mm=on_stay,
        half_length_mm=clamp.half_length_mm,
        bar_bearing_deg=span_at(chosen.bearing_deg, at),
        toe_in_deg=toe_in,
        aside_mm=None if chosen.aside_mm is None else span_at(chosen.aside_mm, at),
        lateral_mm=lateral,
        width_mm=width,
        height_mm=height,
        around_mm=around,
        band_mm=band_diameter(around),
        margins_mm=tuple((name, Room(float(low), float(high)).span()) for name, low, high in in_hand),
        tightest=margins.tightest(),
    )
