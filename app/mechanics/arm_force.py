"""The torque that turns an axle back, the force with which an arm's end holds it, and what that end may bear.

Seen from the left, the bike facing left, the wheel turns anticlockwise when it is driven and the axle is
pushed clockwise: the end of an arm that lies forward along the chainstay presses up, and down in braking.
"""

from __future__ import annotations

import math

from app.facts.span import THOUSAND, Span

# Newton metres for one ampere at one turn a minute for each volt: 60 / (2 pi).
NM_PER_A_AND_KV = 30 / math.pi
# The one current for which torque is torque constant times current, for one ampere of each kind of rating.
LINE_SHARE = {"peak": math.sqrt(3) / 2, "six_step": 1.0, "rms": math.sqrt(3 / 2)}
QUARTER_TURN_DEG = 90.0


def _quotient(above: Span, below: Span, scale: int) -> Span:
    """One span times a whole number, over another that is above zero; exact, and rounded outward."""
    low = above.low * scale // (below.high if above.low >= 0 else below.low)
    high = -(-above.high * scale // (below.low if above.high >= 0 else below.high))
    return Span(low, high)


def _line_shares(kind: str | None) -> tuple[float, float]:
    """The least and the largest share; all kinds where the maker doesn't say which ampere is meant."""
    shares = [LINE_SHARE[kind]] if kind else list(LINE_SHARE.values())
    return min(shares), max(shares)


def phase_torque(*, kv_rpm_per_v: Span, phase_current_a: Span, kind: str | None) -> Span:
    """The most that a controller can turn the wheel with, in N·m: torque constant times phase current.

    kv_rpm_per_v     at the wheel, per volt of peak line-to-line back-emf, so that a gear is in it already
    phase_current_a  the controller's limit
    kind             peak, six_step or rms; None where the maker doesn't say, and all three are possible

    Derived: losses are not credited, so that the true torque is never more.
    """
    (least, most), (amps_low, amps_high) = _line_shares(kind), phase_current_a.ends
    kv_low, kv_high = kv_rpm_per_v.ends
    return Span.outward(
        NM_PER_A_AND_KV * least * amps_low / kv_high, NM_PER_A_AND_KV * most * amps_high / kv_low
    )


def shorted_torque(*, kv_rpm_per_v: Span, inductance_mh: Span, pole_pairs: int) -> Span:
    """The most that a direct drive brakes with when its phase leads are joined, in N·m, at whatever speed.

    Derived from the currents of three equal phases, inductance line to line: the torque is largest where
    reactance and resistance are equal, and half the square of the emf's constant over pairs and inductance.
    """
    (kv_low, kv_high), (mh_low, mh_high) = kv_rpm_per_v.ends, inductance_mh.ends
    half = NM_PER_A_AND_KV**2 / (2 * pole_pairs)
    return Span.outward(half / kv_high**2 / mh_high * THOUSAND, half / kv_low**2 / mh_low * THOUSAND)


def anchor_force(*, torque_nm: Span, lever_mm: Span) -> Span:
    """Force at the anchor in N, square to the lever: torque over the distance from the axle to the anchor.

    The arm alone carries the torque; the axle's flats and the friction under its nuts are a reserve.
    Source: the balance of moments about the axle. Errors: ValueError unless the lever is longer than nothing.
    """
    if lever_mm.low <= 0:
        message = f"A lever must be longer than 0 mm, not {lever_mm.ends[0]:g}."
        raise ValueError(message)
    # Thousandths of torque and lever cancel; a metre has a thousand mm, the answer is in thousandths.
    return _quotient(torque_nm, lever_mm, THOUSAND * THOUSAND)


def force_allowed(*, rated_n: Span, factor: Span) -> Span:
    """The most force in N that leaves a rating so many times as large; the factor is above zero."""
    return _quotient(rated_n, factor, THOUSAND)


def push_bearing_deg(arm_bearing_deg: float, *, driving: bool) -> float:
    """In which direction the arm's end presses on what holds it, as a bearing in the side view.

    Bearings run from the chainstay's direction towards the seatstay, so that 90 is up for an arm that lies
    forward along the stay, and -90 down.
    """
    return arm_bearing_deg + (QUARTER_TURN_DEG if driving else -QUARTER_TURN_DEG)
