"""Whether the arm bears the motor's braking, and the brake that a motor is when its leads are joined."""

from __future__ import annotations

from app.catalogue.drive_parts import Controller
from app.catalogue.hub_parts import Hub, TorqueArm, Winding
from app.catalogue.provenance import Provenance
from app.catalogue.standards import Standards
from app.facts.bike import Bike
from app.facts.span import Span
from app.facts.truth import Truth
from app.mechanics.arm_force import shorted_torque
from app.rules.check import Check, Inapplicable, Limit, Missing
from app.rules.outcome import Weight
from app.rules.rule import PART_DATA, PRACTICE, Says, Source, rule
from app.rules.torque_arm.applies import never_clamped
from app.rules.torque_arm.force import ASSUMES, NOT_KNOWN, SETTLED_BY
from app.rules.torque_arm.load import (
    FAULT,
    HOLDS,
    NOTHING_BORNE,
    RESERVE,
    against,
    lever,
    motor_torque,
    rating,
    usual,
)

NO_REVERSE = Inapplicable("This hub and this controller don't brake with the motor.")
ONE_WAY = Inapplicable("This arm leans on one side of the stay and holds no braking at all.")
FREEWHEELS = Inapplicable("This hub's motor turns free when the wheel is faster than it.")

BRAKES_AS_IT_DRIVES = f"{ASSUMES} The motor brakes with no more current than it drives with."
REVERSING = "Where hub and controller brake with the motor and the arm's end holds both ways."
NOTHING_TO_MEASURE = "Ask the kit's maker how this arm holds."


def _no_braking(hub: Hub, controller: Controller) -> Inapplicable | None:
    return None if hub.regenerates and controller.regenerates else NO_REVERSE


def braking(
    bike: Bike, torque_arm: TorqueArm, *, torque_nm: Span, factor: Limit, kind: Provenance
) -> Check | Inapplicable | Missing:
    """The force at the arm's end when the motor brakes, against a share of the arm's rating."""
    if elsewhere := never_clamped(bike, torque_arm):
        return elsewhere
    if torque_arm.holds_braking is False:
        return ONE_WAY
    rated = rating(torque_arm, "rated_reverse_force_n", kind)
    if not isinstance(rated, Limit):
        return rated
    return against(rated, factor, torque_nm=torque_nm, lever_mm=lever(bike, torque_arm))


@rule(
    title="The arm's end holds both ways",
    weight=Weight.BLOCKS,
    applies="Where both hub and controller brake with the motor.",
    expects="The arm's end is held from both sides, so that it can press up and down.",
    assumes="Driving presses the end of an arm that lies forward along the stay up, braking presses it down.",
    source=PART_DATA,
    settled_by=(),
    says=Says(
        passed="Driving presses the arm's end up and braking presses it down; it is held both ways.",
        failed="Braking presses the arm's end down, and it leans on one side of the stay alone.",
        not_known=NOTHING_TO_MEASURE,
        remedy="Take an arm whose clamp goes around the stay, or a controller that doesn't brake.",
    ),
)
def anchor_both_ways(
    hub: Hub, torque_arm: TorqueArm, controller: Controller
) -> Check | Inapplicable | Missing:
    if torque_arm.holds_braking is None:
        return _no_braking(hub, controller) or Missing(torque_arm, "holds_braking")
    return _no_braking(hub, controller) or Check.of_truth(Truth.of(yes=torque_arm.holds_braking))


@rule(
    title="The arm holds the motor's braking",
    weight=Weight.BLOCKS,
    applies=REVERSING,
    expects="The arm's rating against braking is at least 1.5 times the force at its anchor.",
    assumes=BRAKES_AS_IT_DRIVES,
    source=PART_DATA,
    version=2,
    settled_by=SETTLED_BY,
    limits=(HOLDS,),
    says=Says(
        passed="Braking presses the arm's end down with {reading}: {torque_nm} at {lever_mm}. "
        "Of {rated_n} a factor of 1.5 leaves {high}. At worst {margin} in hand.",
        failed="Braking presses the arm's end down with {reading}: {torque_nm} at {lever_mm}. "
        "Of {rated_n} a factor of 1.5 leaves {high}. At best {margin} too much.",
        not_known=NOT_KNOWN,
        remedy="Take a stronger arm, or a controller that doesn't brake with the motor.",
    ),
)
def arm_reverse_holds(
    bike: Bike, hub: Hub, torque_arm: TorqueArm, winding: Winding, controller: Controller
) -> Check | Inapplicable | Missing:
    torque = motor_torque(winding, controller)
    return _no_braking(hub, controller) or braking(
        bike, torque_arm, torque_nm=torque, factor=HOLDS, kind=Provenance.PART
    )


@rule(
    title="The arm has a reserve for the motor's braking",
    weight=Weight.CAUTIONS,
    applies=REVERSING,
    expects="The arm's rating against braking is at least twice the force at its anchor.",
    assumes=BRAKES_AS_IT_DRIVES,
    source=PRACTICE,
    version=2,
    settled_by=SETTLED_BY,
    limits=(RESERVE,),
    says=Says(
        passed="Braking presses the arm's end down with {reading}: {torque_nm} at {lever_mm}. "
        "Of {rated_n} a factor of 2 leaves {high}. At worst {margin} in hand.",
        failed="Braking presses the arm's end down with {reading}: {torque_nm} at {lever_mm}. "
        "Of {rated_n} a factor of 2 leaves {high}. At best {margin} too much.",
        not_known=NOT_KNOWN,
        remedy="Set the controller's braking to less, and tighten the arm again after 50 km.",
    ),
)
def arm_reverse_reserve(
    bike: Bike, hub: Hub, torque_arm: TorqueArm, winding: Winding, controller: Controller
) -> Check | Inapplicable | Missing:
    torque = motor_torque(winding, controller)
    return _no_braking(hub, controller) or braking(
        bike, torque_arm, torque_nm=torque, factor=RESERVE, kind=Provenance.PRACTICE
    )


def _rated_for_a_fault(torque_arm: TorqueArm, standards: Standards) -> Limit | Missing:
    """Its rating against braking, else what such a piece usually bears, or nothing where it holds one way."""
    if torque_arm.holds_braking is False:
        return NOTHING_BORNE
    if torque_arm.rated_reverse_force_n is not None:
        return Limit(torque_arm.rated_reverse_force_n, Provenance.PRACTICE)
    return usual(torque_arm, standards)


@rule(
    title="The arm bears a motor whose leads are joined by a fault",
    weight=Weight.CAUTIONS,
    applies="Where the motor turns with the wheel, so that it brakes by itself when its leads touch.",
    expects="The arm's rating against braking is at least 1.1 times the force at its anchor.",
    assumes="The wheel turns at the speed at which joined leads brake most.",
    source=Source("Derived", "currents of three equal phases that are joined; factor by common practice"),
    settled_by=SETTLED_BY,
    limits=(FAULT,),
    says=Says(
        passed="With its leads joined the motor presses the arm's end down with {reading}: {torque_nm} at "
        "{lever_mm}. Of {rated_n} a factor of 1.1 leaves {high}. At worst {margin} in hand.",
        failed="With its leads joined the motor presses the arm's end down with {reading}: {torque_nm} at "
        "{lever_mm}. Of {rated_n} a factor of 1.1 leaves {high}. At best {margin} too much.",
        not_known=NOT_KNOWN,
        remedy="Lead the motor's cable where nothing chafes or pinches it, and look at it at every service.",
    ),
)
def arm_fault(
    bike: Bike, hub: Hub, torque_arm: TorqueArm, winding: Winding, standards: Standards
) -> Check | Inapplicable | Missing:
    if elsewhere := never_clamped(bike, torque_arm):
        return elsewhere
    if hub.motor != "direct_drive":
        return FREEWHEELS
    if winding.inductance_mh is None:
        return Missing(winding, "inductance_mh")
    if hub.pole_pairs is None:
        return Missing(hub, "pole_pairs")
    rated = _rated_for_a_fault(torque_arm, standards)
    if isinstance(rated, Missing):
        return rated
    torque = shorted_torque(
        kv_rpm_per_v=winding.kv_rpm_per_v, inductance_mh=winding.inductance_mh, pole_pairs=hub.pole_pairs
    )
    return against(rated, FAULT, torque_nm=torque, lever_mm=lever(bike, torque_arm))
