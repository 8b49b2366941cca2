"""Whether the freehub goes over the axle, and the pedal sensor onto the freehub."""

from __future__ import annotations

from app.catalogue.drive_parts import Sensor
from app.catalogue.hub_parts import AxleSet, Freehub
from app.facts.truth import Truth
from app.rules.check import Check, Inapplicable, Missing, of_part
from app.rules.outcome import Weight
from app.rules.rule import PART_DATA, Says, rule


@rule(
    title="The axle's sleeve passes through the freehub",
    weight=Weight.BLOCKS,
    applies="Where the freehub has a body for the axle to pass.",
    expects="The bore of the freehub is at least as wide as the sleeve of the axle set.",
    assumes="Both are as their drawings say.",
    source=PART_DATA,
    settled_by=(),
    says=Says(
        passed="The sleeve of the axle set is {reading} thick; this freehub takes {high}. "
        "At worst {margin} in hand.",
        failed="The sleeve of the axle set is {reading} thick; this freehub takes {high}. "
        "At best {margin} too thick.",
        not_known="Ask the maker for both diameters.",
        remedy="Take a freehub with a wider bore. Many that sense torque are too narrow for a thru-axle.",
    ),
)
def freehub_bore(axle_set: AxleSet, freehub: Freehub) -> Check | Inapplicable | Missing:
    """Two parts alone: no reading of the bike can change it."""
    if freehub.interface == "threaded_freewheel":
        return Inapplicable("A freewheel is screwed onto the hub, so nothing passes through a body.")
    if axle_set.sleeve_diameter_mm is None:
        return Missing(axle_set, "sleeve_diameter_mm")
    if freehub.bore_mm is None:
        return Missing(freehub, "bore_mm")
    return Check(reading=axle_set.sleeve_diameter_mm, unit="mm", high=of_part(freehub.bore_mm))


@rule(
    title="The pedal sensor mounts on the freehub",
    weight=Weight.BLOCKS,
    applies="Where the sensor sits at the freehub.",
    expects="The sensor's maker lists the freehub.",
    assumes="Nothing is turned or drilled to make it fit.",
    source=PART_DATA,
    settled_by=(),
    says=Says(
        passed="The pedal sensor is made for this freehub.",
        failed="The pedal sensor is made for other freehubs than this.",
        not_known="Ask the maker which freehubs the sensor is for.",
        remedy="Take a pedal sensor that is made for this freehub, or one for the bottom bracket.",
    ),
)
def sensor_mounts(freehub: Freehub, sensor: Sensor) -> Check | Inapplicable | Missing:
    """The maker's own list."""
    if sensor.sits != "freehub":
        return Inapplicable("This sensor sits at the bottom bracket.")
    if not sensor.freehubs:
        return Missing(sensor, "freehubs")
    return Check.of_truth(Truth.of(yes=freehub.id in sensor.freehubs))
