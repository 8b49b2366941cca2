"""Whether the frame may carry a motor's torque at the axle, by its material and by the torque's path."""

from __future__ import annotations

from app.catalogue.hub_parts import AxleSet, Hub, TorqueArm
from app.catalogue.provenance import Provenance
from app.catalogue.standards import Standards
from app.facts.bike import Bike
from app.facts.span import Span
from app.facts.truth import Truth
from app.rules.check import Check, Inapplicable, Missing
from app.rules.outcome import Weight
from app.rules.rule import PRACTICE, Says, Source, rule

NAMES = {"other": "another material"}
BEARS = {
    "yes": Truth.YES,
    "with_arm": Truth.YES,
    "with_approval": Truth.NO,
    "unknown": Truth.UNKNOWN,
    "never": Truth.NO,
}


def named(material: str) -> str:
    """A material as a sentence names it."""
    return NAMES.get(material, material)


@rule(
    title="The dropouts bear an axle with flats",
    weight=Weight.BLOCKS,
    applies="Where flats of the axle lean on the slots.",
    expects="The frame is of steel, aluminium or titanium.",
    assumes="The dropouts are of the frame's material, or bonded into it.",
    source=Source("Common practice", "never on carbon or magnesium"),
    settled_by=("frame_material",),
    says=Says(
        passed="Dropouts of {frame_material}; with a torque arm, steel, aluminium and titanium "
        "bear an axle with flats.",
        failed="Flats push the slots apart, and dropouts of {frame_material} never bear that.",
        not_known="Find out what the frame is made of; a magnet holds on steel alone.",
        remedy="Take an axle set without flats whose arm leads the torque into a metal mount.",
    ),
)
def frame_carries_torque(bike: Bike, axle_set: AxleSet, standards: Standards) -> Check | Inapplicable:
    """On carbon the torque ends in a bond that was made for weight alone."""
    if not axle_set.flatted:
        return Inapplicable("No flats of this axle lean on the dropouts.")
    bears = BEARS[standards.material(bike.frame_material).flatted_axle]
    return Check.of_truth(bears, Provenance.PRACTICE_STOPS, {"frame_material": named(bike.frame_material)})


@rule(
    title="The torque's path needs no word from the frame's maker",
    weight=Weight.CAUTIONS,
    applies="Where an arm takes the torque from an axle without flats.",
    expects="The frame is of metal; on carbon the frame maker's agreement is asked for.",
    assumes="The arm ends on the frame's own material or on a mount that is bonded into it.",
    source=Source("Bicycle owner's manuals on carbon", "manualshive.com, 845753 p. 57 and 4118531 p. 103"),
    settled_by=("frame_material",),
    says=Says(
        passed="A frame of {frame_material}; only on carbon does the torque's path need an agreement.",
        failed="The frame is of {frame_material}. The axle set's maker has {approval} "
        "a torque path into a metal mount.",
        not_known="Find out what the frame is made of; a weave or a dull tap points to carbon.",
        remedy="Get the frame maker's agreement in writing, and lead the torque into a metal mount only.",
    ),
)
def carbon_torque_path(bike: Bike, axle_set: AxleSet) -> Check | Inapplicable:
    """Nothing is fixed to a carbon frame where its maker gave no mount."""
    if axle_set.flatted:
        return Inapplicable("The flats of this axle are judged by themselves.")
    of_metal = {"carbon": Truth.NO, "other": Truth.UNKNOWN}.get(bike.frame_material, Truth.YES)
    approval = "approved" if axle_set.carbon_approved else "not approved"
    values = {"frame_material": named(bike.frame_material), "approval": approval}
    return Check.of_truth(of_metal, Provenance.PUBLISHED, values)


@rule(
    title="Flats in aluminium dropouts are held by arms enough",
    weight=Weight.CAUTIONS,
    applies="Where an axle with flats lies in aluminium dropouts.",
    expects="There are two arms above 40 N·m of peak torque, and wherever the hub also brakes.",
    assumes="The peak torque is as the hub's maker states it.",
    source=PRACTICE,
    settled_by=("frame_material",),
    says=Says(
        passed="Arms: {arms}, peak torque {peak_torque_nm}; aluminium wants two arms above "
        "{two_arms_from_nm}, and wherever the hub also brakes.",
        failed="Arms: {arms}, peak torque {peak_torque_nm}; aluminium wants two arms above "
        "{two_arms_from_nm}, and wherever the hub also brakes.",
        not_known="Find out what the frame is made of; a magnet holds on steel alone.",
        remedy="Fit a second torque arm on the drive side.",
    ),
)
def two_arms_on_aluminium(
    bike: Bike, hub: Hub, axle_set: AxleSet, torque_arm: TorqueArm, standards: Standards
) -> Check | Inapplicable | Missing:
    """Aluminium tines give way a little each time the torque turns round, and then break."""
    if not axle_set.flatted:
        return Inapplicable("No flats of this axle lean on the dropouts.")
    two_from = standards.material(bike.frame_material).two_arms_from_nm
    if two_from is None:
        return Inapplicable("Dropouts of this material do with one arm.")
    if hub.peak_torque_nm is None:
        return Missing(hub, "peak_torque_nm")
    wanted = Truth.of(yes=hub.regenerates) | above(hub.peak_torque_nm, two_from)
    enough = Truth.of(yes=torque_arm.arms > 1) | ~wanted
    values: dict[str, Span | str] = {
        "arms": str(torque_arm.arms),
        "peak_torque_nm": hub.peak_torque_nm,
        "two_arms_from_nm": two_from,
    }
    return Check.of_truth(enough, Provenance.PRACTICE, values)


def above(value: Span, limit: Span) -> Truth:
    """Whether a value of a part is above a limit; unknown where its tolerance straddles it."""
    if value.low > limit.high:
        return Truth.YES
    return Truth.NO if value.high <= limit.low else Truth.UNKNOWN
