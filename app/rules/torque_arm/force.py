"""Whether the arm bears the motor's torque, driving and braking, and how much it has in reserve."""

from __future__ import annotations

from app.catalogue.drive_parts import Controller
from app.catalogue.hub_parts import Hub, TorqueArm
from app.catalogue.provenance import Provenance
from app.facts.bike import Bike
from app.facts.span import Span
from app.mechanics.arm_force import anchor_force, force_allowed
from app.rules.check import Check, Inapplicable, Limit, Missing, habit
from app.rules.outcome import Weight
from app.rules.rule import PART_DATA, PRACTICE, Says, rule

NO_CLAMP_ON_CARBON = Inapplicable("The stay is carbon, and no clamp goes on it.")
NO_REVERSE = Inapplicable("This hub and this controller don't brake with the motor.")

# How often the load goes into the rating: below the first it doesn't hold, below the second without reserve.
HOLDS = Limit(Span.exactly("1.5"), Provenance.PRACTICE_STOPS, source="Common practice")
RESERVE = habit(2)

ASSUMES = (
    "The arm alone carries the hub's peak torque, clamped as near to the axle as it can be. "
    "Flats, nuts and a second arm are a reserve."
)
ASSUMES_REVERSE = f"{ASSUMES} The motor brakes no harder than it drives."
CLAMPED = "Where the arm has something to hold on to: never a clamp on a carbon stay."
REVERSING = "Where both hub and controller brake with the motor."
NOT_KNOWN = "Find out what the left chainstay is made of; a magnet tells steel."
NOTHING_TO_MEASURE = "Ask the kit's maker for the torque of the hub and the rating of the arm."


def _load(hub: Hub, torque_arm: TorqueArm, rating: str, factor: Limit, kind: Provenance) -> Check | Missing:
    """The force at the anchor against a share of one of the arm's ratings."""
    rated: Span | None = getattr(torque_arm, rating)
    if rated is None:
        return Missing(torque_arm, rating)
    torque, lever = hub.peak_torque_nm, torque_arm.reach_from_mm
    if torque is None:
        return Missing(hub, "peak_torque_nm")
    return Check(
        reading=anchor_force(torque_nm=torque, lever_mm=lever),
        unit="N",
        high=Limit(force_allowed(rated_n=rated, factor=factor.value), kind),
        values={"torque_nm": torque, "lever_mm": lever, "rated_n": rated},
    )


def _on_carbon(bike: Bike, torque_arm: TorqueArm) -> Inapplicable | None:
    clamped = torque_arm.anchor == "stay_clamp"
    return NO_CLAMP_ON_CARBON if clamped and bike.stay_material == "carbon" else None


def _one_way_only(hub: Hub, controller: Controller) -> Inapplicable | None:
    return None if hub.regenerates and controller.regenerates else NO_REVERSE


@rule(
    title="The arm holds the motor's torque",
    weight=Weight.BLOCKS,
    applies=CLAMPED,
    expects="The arm's rating is at least 1.5 times the force at its anchor.",
    assumes=ASSUMES,
    source=PART_DATA,
    settled_by=("stay_material",),
    limits=(HOLDS,),
    says=Says(
        passed="Force at the anchor {reading}, from {torque_nm} at {lever_mm}; rated {rated_n}, "
        "so {high} with a factor of 1.5. At worst {margin} in hand.",
        failed="Force at the anchor {reading}, from {torque_nm} at {lever_mm}; rated {rated_n}, "
        "so {high} with a factor of 1.5. At best {margin} too much.",
        not_known=NOT_KNOWN,
        remedy="Take an arm with a longer reach or a higher rating, or a hub with less peak torque.",
    ),
)
def arm_force_holds(bike: Bike, hub: Hub, torque_arm: TorqueArm) -> Check | Inapplicable | Missing:
    return _on_carbon(bike, torque_arm) or _load(hub, torque_arm, "rated_force_n", HOLDS, Provenance.PART)


@rule(
    title="The arm has a reserve for the motor's torque",
    weight=Weight.CAUTIONS,
    applies=CLAMPED,
    expects="The arm's rating is at least twice the force at its anchor.",
    assumes=ASSUMES,
    source=PRACTICE,
    settled_by=("stay_material",),
    limits=(RESERVE,),
    says=Says(
        passed="Force at the anchor {reading}, from {torque_nm} at {lever_mm}; rated {rated_n}, "
        "so {high} with a factor of 2. At worst {margin} in hand.",
        failed="Force at the anchor {reading}, from {torque_nm} at {lever_mm}; rated {rated_n}, "
        "so {high} with a factor of 2. At best {margin} too much.",
        not_known=NOT_KNOWN,
        remedy="Clamp the arm as far from the axle as the stay is free, and tighten it again after 50 km.",
    ),
)
def arm_force_reserve(bike: Bike, hub: Hub, torque_arm: TorqueArm) -> Check | Inapplicable | Missing:
    return _on_carbon(bike, torque_arm) or _load(
        hub, torque_arm, "rated_force_n", RESERVE, Provenance.PRACTICE
    )


@rule(
    title="The arm holds the motor's braking",
    weight=Weight.BLOCKS,
    applies=REVERSING,
    expects="The arm's rating against braking is at least 1.5 times the force at its anchor.",
    assumes=ASSUMES_REVERSE,
    source=PART_DATA,
    settled_by=(),
    limits=(HOLDS,),
    says=Says(
        passed="Braking force at the anchor {reading}, from {torque_nm} at {lever_mm}; rated {rated_n}, "
        "so {high} with a factor of 1.5. At worst {margin} in hand.",
        failed="Braking force at the anchor {reading}, from {torque_nm} at {lever_mm}; rated {rated_n}, "
        "so {high} with a factor of 1.5. At best {margin} too much.",
        not_known=NOTHING_TO_MEASURE,
        remedy="Take a stronger arm, or a controller that doesn't brake with the motor.",
    ),
)
def arm_reverse_holds(
    hub: Hub, torque_arm: TorqueArm, controller: Controller
) -> Check | Inapplicable | Missing:
    return _one_way_only(hub, controller) or _load(
        hub, torque_arm, "rated_reverse_force_n", HOLDS, Provenance.PART
    )


@rule(
    title="The arm has a reserve for the motor's braking",
    weight=Weight.CAUTIONS,
    applies=REVERSING,
    expects="The arm's rating against braking is at least twice the force at its anchor.",
    assumes=ASSUMES_REVERSE,
    source=PRACTICE,
    settled_by=(),
    limits=(RESERVE,),
    says=Says(
        passed="Braking force at the anchor {reading}, from {torque_nm} at {lever_mm}; rated {rated_n}, "
        "so {high} with a factor of 2. At worst {margin} in hand.",
        failed="Braking force at the anchor {reading}, from {torque_nm} at {lever_mm}; rated {rated_n}, "
        "so {high} with a factor of 2. At best {margin} too much.",
        not_known=NOTHING_TO_MEASURE,
        remedy="Set the controller's braking to less, and tighten the arm again after 50 km.",
    ),
)
def arm_reverse_reserve(
    hub: Hub, torque_arm: TorqueArm, controller: Controller
) -> Check | Inapplicable | Missing:
    return _one_way_only(hub, controller) or _load(
        hub, torque_arm, "rated_reverse_force_n", RESERVE, Provenance.PRACTICE
    )
