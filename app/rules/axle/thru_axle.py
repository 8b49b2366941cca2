"""The frame's own thru-axle: whether it goes through the hub, and whether its head and thread still hold."""

from __future__ import annotations

from app.catalogue.hub_parts import AxleSet
from app.catalogue.standards import Standards
from app.facts.bike import Bike
from app.facts.truth import Truth
from app.mechanics.axle_thread import thru_axle_engagement_mm
from app.rules.axle.applies import no_thru_axle
from app.rules.check import Check, Inapplicable, Missing, of_row
from app.rules.outcome import Weight
from app.rules.rule import PART_DATA, Says, Source, rule


@rule(
    title="The thru-axle is as thick as the hub's bore",
    weight=Weight.BLOCKS,
    applies="Where the frame's thru-axle is to hold the hub.",
    expects="The thru-axle measures within 0.5 mm of the size that the axle set is made for.",
    assumes="The axle is of one of the sizes in use, 10 or 12 mm at the rear, and not worn.",
    source=Source("Thru-axle measuring guide", "tipartstitanium.com: a male M12 axle, 11.85 to 11.95 mm"),
    settled_by=("dropout_kind", "thru_axle_diameter_mm"),
    says=Says(
        passed="Thru-axle {reading}; this axle set is made for {thru_diameter_mm}.",
        failed="Thru-axle {reading}; this axle set is made for {thru_diameter_mm}. "
        "At best {margin} too thin.",
        failed_high="Thru-axle {reading}; this axle set is made for {thru_diameter_mm}. "
        "At best {margin} too thick.",
        not_known="Measure across the smooth part of the thru-axle, or read the size printed on it.",
        remedy="Take an axle set for a thinner thru-axle.",
        remedy_high="Take an axle set for a thicker thru-axle.",
    ),
)
def thru_axle_diameter(bike: Bike, axle_set: AxleSet, standards: Standards) -> Check | Inapplicable | Missing:
    """A thru-axle of another standard either does not go in or does not centre the hub."""
    if elsewhere := no_thru_axle(bike, axle_set):
        return elsewhere
    size = axle_set.thru_diameter_mm
    if size is None:
        return Missing(axle_set, "thru_diameter_mm")
    off = standards.limit("thru_axle_size_mm")
    return Check(
        reading=bike.thru_axle_diameter_mm,
        unit="mm",
        low=of_row(off, size - off.value),
        high=of_row(off, size + off.value),
        values={"thru_diameter_mm": size},
    )


@rule(
    title="The thread of the thru-axle can be used again",
    weight=Weight.CAUTIONS,
    applies="Where the frame's thru-axle is to hold the hub.",
    expects="The pitch is one of those that the axle set is made for.",
    assumes="The thread is clean and whole. Two frames of one width need not share an axle.",
    source=PART_DATA,
    settled_by=("dropout_kind", "thru_axle_pitch_mm"),
    says=Says(
        passed="Pitch {thru_axle_pitch}; this axle set is made for {thru_pitches}.",
        failed="Pitch {thru_axle_pitch}; this axle set is made for {thru_pitches}.",
        not_known="Read the pitch on the thru-axle, or count its crests over 12.7 mm.",
        remedy="Order an axle with the frame's pitch in the length that this set needs.",
    ),
)
def thru_axle_thread(bike: Bike, axle_set: AxleSet) -> Check | Inapplicable | Missing:
    """Pitches follow no standard; an axle of another pitch starts to turn and then strips the frame."""
    if elsewhere := no_thru_axle(bike, axle_set):
        return elsewhere
    if not axle_set.thru_pitches:
        return Missing(axle_set, "thru_pitches")
    pitch = bike.thru_axle_pitch_mm
    values = {
        "thru_axle_pitch": pitch if pitch == "other" else f"{pitch} mm",
        "thru_pitches": " or ".join(f"{each} mm" for each in axle_set.thru_pitches),
    }
    return Check.of_truth(Truth.of(yes=pitch in axle_set.thru_pitches), values=values)


@rule(
    title="The thru-axle reaches far enough into its thread",
    weight=Weight.CAUTIONS,
    applies="Where the frame's thru-axle is to hold the hub.",
    expects="At least 10 mm of thread hold in the frame with what this set lays under the head.",
    assumes="The dropout under the head is as thick as the left one, and the frame's thread begins "
    "at the floor of its socket.",
    source=Source("Common practice", "0.8 to 1.0 times the diameter, in steel or an alloy insert"),
    settled_by=(
        "dropout_kind",
        "thru_axle_length_mm",
        "thru_axle_thread_length_mm",
        "dropout_thickness_mm",
        "dropout_width_mm",
        "socket_depth_mm",
    ),
    says=Says(
        passed="{reading} of thread hold in the frame; {low} are wanted. At worst {margin} in hand.",
        failed="{reading} of thread hold in the frame; {low} are wanted. At best {margin} too short.",
        not_known="Measure the thru-axle under its head, its thread, the left dropout and lip to lip.",
        remedy="Order a thru-axle of the frame's pitch that is longer by what this set adds under the head, "
        "with thread enough at its end.",
    ),
)
def thru_axle_engagement(
    bike: Bike, axle_set: AxleSet, standards: Standards
) -> Check | Inapplicable | Missing:
    """What lies under the head is taken from the thread at the other end."""
    if elsewhere := no_thru_axle(bike, axle_set):
        return elsewhere
    if axle_set.under_head_mm is None:
        return Missing(axle_set, "under_head_mm")
    engaged = thru_axle_engagement_mm(
        under_head_mm=bike.thru_axle_length_mm,
        thread_mm=bike.thru_axle_thread_length_mm,
        added_mm=axle_set.under_head_mm,
        thickness_mm=bike.dropout_thickness_mm,
        lip_to_lip_mm=bike.dropout_width_mm,
        socket_depth_mm=bike.socket_depth_mm,
    )
    return Check(reading=engaged, unit="mm", low=of_row(standards.limit("thread_engagement_mm")))
