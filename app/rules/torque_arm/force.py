"""Whether the arm bears the motor's torque when it drives, and how much it has in reserve."""

from __future__ import annotations

from app.catalogue.drive_parts import Controller
from app.catalogue.hub_parts import TorqueArm, Winding
from app.catalogue.provenance import Provenance
from app.catalogue.standards import Standards
from app.facts.bike import Bike
from app.facts.span import Span
from app.rules.check import Check, Inapplicable, Limit, Missing
from app.rules.outcome import Weight
from app.rules.rule import PART_DATA, PRACTICE, Says, rule
from app.rules.torque_arm.applies import never_clamped
from app.rules.torque_arm.load import HOLDS, RESERVE, against, lever, motor_torque, rating, usual

ASSUMES = (
    "The motor pulls with all the phase current of the controller, its losses left out. The arm alone bears "
    "it, clamped as far from the axle as the stay is free. Flats, nuts and a second arm are a reserve."
)
RATED = Inapplicable("The maker rates this arm.")
CLAMPED = "Where the arm has something to hold on to: never a clamp on a carbon stay."
SETTLED_BY = ("stay_material", "stay_clear_to_mm")
NOT_KNOWN = "Find out what the left chainstay is made of, and measure where its free part ends."


def driving(
    bike: Bike, torque_arm: TorqueArm, *, torque_nm: Span, factor: Limit, kind: Provenance
) -> Check | Inapplicable | Missing:
    """The force at the arm's end when the motor drives, against a share of the arm's rating."""
    if elsewhere := never_clamped(bike, torque_arm):
        return elsewhere
    rated = rating(torque_arm, "rated_force_n", kind)
    if not isinstance(rated, Limit):
        return rated
    return against(rated, factor, torque_nm=torque_nm, lever_mm=lever(bike, torque_arm))


@rule(
    title="The arm holds the motor's torque",
    weight=Weight.BLOCKS,
    applies=CLAMPED,
    expects="The arm's rating is at least 1.5 times the force at its anchor.",
    assumes=ASSUMES,
    source=PART_DATA,
    version=2,
    settled_by=SETTLED_BY,
    limits=(HOLDS,),
    says=Says(
        passed="Driving presses the arm's end up with {reading}: {torque_nm} at {lever_mm}. "
        "Of {rated_n} a factor of 1.5 leaves {high}. At worst {margin} in hand.",
        failed="Driving presses the arm's end up with {reading}: {torque_nm} at {lever_mm}. "
        "Of {rated_n} a factor of 1.5 leaves {high}. At best {margin} too much.",
        not_known=NOT_KNOWN,
        remedy="Take an arm with a longer reach or a higher rating, or a controller with less phase current.",
    ),
)
def arm_force_holds(
    bike: Bike, torque_arm: TorqueArm, winding: Winding, controller: Controller
) -> Check | Inapplicable | Missing:
    torque = motor_torque(winding, controller)
    return driving(bike, torque_arm, torque_nm=torque, factor=HOLDS, kind=Provenance.PART)


@rule(
    title="The arm has a reserve for the motor's torque",
    weight=Weight.CAUTIONS,
    applies=CLAMPED,
    expects="The arm's rating is at least twice the force at its anchor.",
    assumes=ASSUMES,
    source=PRACTICE,
    version=2,
    settled_by=SETTLED_BY,
    limits=(RESERVE,),
    says=Says(
        passed="Driving presses the arm's end up with {reading}: {torque_nm} at {lever_mm}. "
        "Of {rated_n} a factor of 2 leaves {high}. At worst {margin} in hand.",
        failed="Driving presses the arm's end up with {reading}: {torque_nm} at {lever_mm}. "
        "Of {rated_n} a factor of 2 leaves {high}. At best {margin} too much.",
        not_known=NOT_KNOWN,
        remedy="Clamp the arm as far from the axle as the stay is free, and tighten it again after 50 km.",
    ),
)
def arm_force_reserve(
    bike: Bike, torque_arm: TorqueArm, winding: Winding, controller: Controller
) -> Check | Inapplicable | Missing:
    torque = motor_torque(winding, controller)
    return driving(bike, torque_arm, torque_nm=torque, factor=RESERVE, kind=Provenance.PRACTICE)


@rule(
    title="An arm without a rating is held by a piece that usually bears as much",
    weight=Weight.CAUTIONS,
    applies="Where the maker doesn't rate the arm for driving, or for braking with a controller that brakes.",
    expects="What such a piece usually bears is at least twice the force at it.",
    assumes=ASSUMES,
    source=PRACTICE,
    settled_by=SETTLED_BY,
    limits=(RESERVE,),
    says=Says(
        passed="The motor presses the arm's end with {reading}: {torque_nm} at {lever_mm}. "
        "Such a piece bears {rated_n}; a factor of 2 leaves {high}. At worst {margin} in hand.",
        failed="The motor presses the arm's end with {reading}: {torque_nm} at {lever_mm}. "
        "Such a piece bears {rated_n}; a factor of 2 leaves {high}. At best {margin} too much.",
        not_known=NOT_KNOWN,
        remedy="Ask the arm's maker for its rating, or take an arm that has one.",
    ),
)
def arm_without_rating(
    bike: Bike, torque_arm: TorqueArm, winding: Winding, controller: Controller, standards: Standards
) -> Check | Inapplicable | Missing:
    if elsewhere := never_clamped(bike, torque_arm):
        return elsewhere
    brakes = controller.regenerates and torque_arm.holds_braking is not False
    if torque_arm.rated_force_n is not None and (torque_arm.rated_reverse_force_n is not None or not brakes):
        return RATED
    bears = usual(torque_arm, standards)
    if isinstance(bears, Missing):
        return bears
    torque = motor_torque(winding, controller)
    return against(bears, RESERVE, torque_nm=torque, lever_mm=lever(bike, torque_arm))
