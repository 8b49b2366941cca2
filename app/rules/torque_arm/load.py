"""The force at the end of an arm against what its maker rates it for, or what such anchors usually bear."""

from __future__ import annotations

from app.catalogue.drive_parts import Controller
from app.catalogue.hub_parts import TorqueArm, Winding
from app.catalogue.provenance import Provenance
from app.catalogue.standards import Standards
from app.facts.bike import Bike
from app.facts.span import THOUSAND, Span
from app.mechanics.arm_force import anchor_force, force_allowed, phase_torque
from app.mechanics.arm_reach import clamp_lever
from app.mechanics.clamp import clamp_of
from app.rules.check import Check, Inapplicable, Limit, Missing, Value, habit

# How often the load goes into the rating: below the first it doesn't hold, below the second without reserve;
# the third is for a fault, which nobody rides with.
HOLDS = Limit(Span.exactly("1.5"), Provenance.PRACTICE_STOPS, source="Common practice")
RESERVE = habit(2)
FAULT = habit("1.1")
NOTHING_BORNE = Limit(Span(0, 0), Provenance.PART)
JUDGED_BY_KIND = Inapplicable(
    "The maker gives no rating; what such an anchor usually bears is asked instead."
)


def lever(bike: Bike, torque_arm: TorqueArm) -> Span:
    """From the axle to where the arm is held, in mm: the clamp as far out as it goes, or else the bolt."""
    if torque_arm.anchor == "mount_bolt":
        return torque_arm.reach_from_mm
    return clamp_lever(clamp_of(torque_arm), bike.stay_clear_to_mm)


def rating(torque_arm: TorqueArm, field: str, kind: Provenance) -> Limit | Missing | Inapplicable:
    """The maker's rating. Where there is none, another rule asks what such a piece usually bears."""
    rated: Span | None = getattr(torque_arm, field)
    if rated is not None:
        return Limit(rated, kind)
    return Missing(torque_arm, field) if torque_arm.fastening is None else JUDGED_BY_KIND


def usual(torque_arm: TorqueArm, standards: Standards) -> Limit | Missing:
    """What the piece that holds the arm usually bears."""
    if torque_arm.fastening is None:
        return Missing(torque_arm, "fastening")
    row = standards.anchor(torque_arm.fastening)
    return Limit(row.force_n, row.provenance, source=f"{row.name}, {row.source}")


def motor_torque(winding: Winding, controller: Controller) -> Span:
    """The most that the controller can turn this winding with, in N·m at the wheel."""
    return phase_torque(
        kv_rpm_per_v=winding.kv_rpm_per_v,
        phase_current_a=controller.phase_current_limit_a,
        kind=controller.phase_current_kind,
    )


def against(rated: Limit, factor: Limit, *, torque_nm: Span, lever_mm: Span) -> Check:
    """The force that a torque makes at that lever, and as much of a rating as the factor leaves."""
    values: dict[str, Value] = {"torque_nm": torque_nm, "lever_mm": lever_mm, "rated_n": rated.value}
    return Check(
        reading=_whole_newtons(anchor_force(torque_nm=torque_nm, lever_mm=lever_mm)),
        unit="N",
        high=rated._replace(value=_whole_newtons(force_allowed(rated_n=rated.value, factor=factor.value))),
        values=values,
    )


def _whole_newtons(force: Span) -> Span:
    """Outward to whole newtons: nobody knows a force more closely."""
    return Span(force.low // THOUSAND * THOUSAND, -(-force.high // THOUSAND) * THOUSAND)
