"""What is left if the arm slips: how hard the axle's flats would press on their slots."""

from __future__ import annotations

from fractions import Fraction

from app.catalogue.hub_parts import AxleSet, Hub
from app.catalogue.provenance import Provenance
from app.catalogue.standards import Standards
from app.facts.bike import Bike
from app.facts.span import Span
from app.mechanics.flats import bolt_load, flat_pressure, friction_torque
from app.rules.check import Check, Inapplicable, Limit, Missing, Value
from app.rules.outcome import Weight
from app.rules.rule import Says, Source, rule

NO_FLATS = Inapplicable("This axle has no flats in the slots.")
BEARS_NONE = Inapplicable("Dropouts of this material never bear flats, or nobody knows.")

HALF = Fraction(1, 2)
# Where washer and locknut press, for each mm of thread: 8.5 mm from the middle of an M12 axle.
MEAN_RADIUS = Fraction(7, 10)
NUTS = {10: "axle_nut_10", 12: "axle_nut_m12", 14: "axle_nut_m14"}


def _friction(axle_set: AxleSet, thread_mm: Span, standards: Standards) -> Span:
    """What one dropout holds between nut and locknut; half of it is left where paint gives way."""
    size = min(NUTS, key=lambda size: abs(size - thread_mm.ends[0]))
    tightening = axle_set.tightening_nm or standards.fastener(NUTS[size]).torque_nm
    load = bolt_load(torque_nm=tightening, thread_mm=thread_mm)
    held = friction_torque(load_n=load, radius_mm=thread_mm.times(MEAN_RADIUS))
    return held.times(HALF).hull(held)


@rule(
    title="The flats hold for a while if the arm slips",
    weight=Weight.CAUTIONS,
    applies="Where flats of the axle lie in slots of steel, aluminium or titanium.",
    expects="With half of the peak torque each, the flats press less than the weakest such dropout bears.",
    assumes="Both dropouts take the same share. Pressure rises from the middle of a flat to its edge. "
    "Friction under the nuts is left out.",
    source=Source(
        "Derived", "pressure on the diagonal halves of two flats; strengths of materials from memory"
    ),
    settled_by=("frame_material", "dropout_thickness_mm"),
    says=Says(
        passed="If the arm slips, {share_nm} a side press flat on slot with {reading}; dropouts bear {high}. "
        "The nuts hold {friction_nm} a side. At worst {margin} in hand.",
        failed="If the arm slips, {share_nm} a side press flat on slot with {reading}; dropouts bear {high}. "
        "The nuts hold {friction_nm} a side. At best {margin} too much.",
        not_known="Find out what the frame is made of, and measure how thick the dropout is.",
        remedy="Rely on the arm alone: file nothing, and look at the slots whenever the wheel is out.",
    ),
)
def flats_reserve(
    bike: Bike, hub: Hub, axle_set: AxleSet, standards: Standards
) -> Check | Inapplicable | Missing:
    """The reserve behind the arm. A slot that gives way opens a little more each time the torque turns."""
    diameter, across = axle_set.axle_thread_mm, axle_set.slot_needs_mm
    if not axle_set.flatted or across is None:
        return NO_FLATS
    bears = standards.material(bike.frame_material).flats_bear_mpa
    if bears is None:
        return BEARS_NONE
    if diameter is None:
        return Missing(axle_set, "axle_thread_mm")
    if hub.peak_torque_nm is None:
        return Missing(hub, "peak_torque_nm")
    if across.high >= diameter.low:
        return NO_FLATS
    share = hub.peak_torque_nm.times(HALF)
    pressure = flat_pressure(
        torque_nm=share, diameter_mm=diameter, across_flats_mm=across, thickness_mm=bike.dropout_thickness_mm
    )
    values: dict[str, Value] = {"share_nm": share, "friction_nm": _friction(axle_set, diameter, standards)}
    return Check(reading=pressure, unit="MPa", high=Limit(bears, Provenance.MEMORY), values=values)
