"""The ends of an axle in open dropouts: thread for the nut, and no stub in the skewer's way."""

from __future__ import annotations

from app.catalogue.hub_parts import AxleSet
from app.catalogue.standards import Standards
from app.facts.bike import Bike
from app.facts.span import Span, in_unit
from app.mechanics.axle_thread import nut_thread_mm, stub_mm
from app.rules.axle.applies import another_kind
from app.rules.check import Check, Inapplicable, Missing, of_part, of_row
from app.rules.outcome import Weight
from app.rules.rule import PRACTICE, Says, Source, rule

MEASURE_THICKNESS = "Measure how thick the left dropout is, beside the slot."


def _no_nuts(bike: Bike, axle_set: AxleSet) -> Inapplicable | None:
    if axle_set.end != "bolt_on":
        return Inapplicable("No nuts hold this axle set.")
    return another_kind(bike, axle_set)


def _thread(bike: Bike, axle_set: AxleSet) -> Span | Missing:
    """Thread for the nut, or the part value that is missing for it."""
    if axle_set.axle_length_mm is None:
        return Missing(axle_set, "axle_length_mm")
    if axle_set.washers_mm is None:
        return Missing(axle_set, "washers_mm")
    return nut_thread_mm(
        axle_length_mm=axle_set.axle_length_mm,
        over_locknut_mm=axle_set.over_locknut_mm,
        thickness_mm=bike.dropout_thickness_mm,
        washers_mm=axle_set.washers_mm,
    )


@rule(
    title="The nuts have thread enough to hold",
    weight=Weight.BLOCKS,
    applies="Where nuts hold the axle in open dropouts.",
    expects="At least 0.8 of the axle's diameter in thread stands out for each nut: 9.6 mm on M12.",
    assumes="Both dropouts are as thick as the left one, and each side has the same washers.",
    source=Source("Common practice", "never less than 0.8 of the diameter"),
    settled_by=("dropout_kind", "dropout_thickness_mm"),
    says=Says(
        passed="{reading} of thread for each nut; an axle of {axle_thread_mm} needs {low}. "
        "At worst {margin} in hand.",
        failed="{reading} of thread for each nut; an axle of {axle_thread_mm} needs {low}. "
        "At best {margin} too short.",
        not_known=MEASURE_THICKNESS,
        remedy="Leave out a washer that holds no torque, or take an axle set with a longer axle.",
    ),
)
def nut_thread_holds(bike: Bike, axle_set: AxleSet, standards: Standards) -> Check | Inapplicable | Missing:
    """A nut on fewer turns strips before it clamps."""
    if elsewhere := _no_nuts(bike, axle_set):
        return elsewhere
    thread = _thread(bike, axle_set)
    if isinstance(thread, Missing):
        return thread
    diameter = axle_set.axle_thread_mm
    if diameter is None:
        return Missing(axle_set, "axle_thread_mm")
    share = standards.limit("nut_thread_per_diameter")
    least = of_row(share, diameter.times(in_unit(share.value.low)))
    return Check(reading=thread, unit="mm", low=least, values={"axle_thread_mm": diameter})


@rule(
    title="The nuts are filled with thread",
    weight=Weight.CAUTIONS,
    applies="Where nuts hold the axle in open dropouts.",
    expects="Behind dropout and washers the axle stands out by at least the height of the nut.",
    assumes="Both dropouts are as thick as the left one, and each side has the same washers.",
    source=PRACTICE,
    settled_by=("dropout_kind", "dropout_thickness_mm"),
    says=Says(
        passed="{reading} of thread for a nut {low} high. At worst {margin} in hand.",
        failed="{reading} of thread for a nut {low} high. At best {margin} too short.",
        not_known=MEASURE_THICKNESS,
        remedy="Leave out a washer that holds no torque, or take a lower nut of full strength.",
    ),
)
def nut_thread(bike: Bike, axle_set: AxleSet) -> Check | Inapplicable | Missing:
    """The first turns of a nut carry most, but the last ones are what is left when they wear."""
    if elsewhere := _no_nuts(bike, axle_set):
        return elsewhere
    thread = _thread(bike, axle_set)
    if isinstance(thread, Missing):
        return thread
    if axle_set.nut_height_mm is None:
        return Missing(axle_set, "nut_height_mm")
    return Check(reading=thread, unit="mm", low=of_part(axle_set.nut_height_mm))


@rule(
    title="The skewer clamps the dropouts, not the axle's ends",
    weight=Weight.CAUTIONS,
    applies="Where a quick release holds the axle in open dropouts.",
    expects="The axle's ends stand out by no more than the dropouts are thick.",
    assumes="Both dropouts are as thick as the left one, and the axle stands out alike on both sides.",
    source=Source("Two bodies can't be in one place", "derived"),
    settled_by=("dropout_kind", "dropout_thickness_mm"),
    says=Says(
        passed="Dropouts {reading} thick; the axle's ends stand out {stub_mm}. At worst {margin} in hand.",
        failed="Dropouts {reading} thick; the axle's ends stand out {stub_mm}. "
        "At best {margin} too far: the skewer closes on the axle.",
        not_known=MEASURE_THICKNESS,
        remedy="File the ends of the axle back until they lie below the outer faces, "
        "or put a washer between dropout and skewer on either side.",
    ),
)
def quick_release_axle_end(bike: Bike, axle_set: AxleSet) -> Check | Inapplicable | Missing:
    """A skewer that meets the axle feels tight and holds nothing."""
    if axle_set.end != "quick_release":
        return Inapplicable("This axle set is not held by a quick release.")
    if elsewhere := another_kind(bike, axle_set):
        return elsewhere
    if axle_set.axle_length_mm is None:
        return Missing(axle_set, "axle_length_mm")
    stub = stub_mm(axle_length_mm=axle_set.axle_length_mm, over_locknut_mm=axle_set.over_locknut_mm)
    return Check(reading=bike.dropout_thickness_mm, unit="mm", low=of_part(stub), values={"stub_mm": stub})
