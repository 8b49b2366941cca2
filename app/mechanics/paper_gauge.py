"""What a paper gauge shows: the arm and the motor's shell at their own size, and how far to keep off them.

A printed gauge is known by marks that are made from what is drawn on it, so that an old print is told from
the part that is in the catalogue now.
"""

from __future__ import annotations

import hashlib
from collections.abc import Iterable
from typing import NamedTuple, cast

import shapely
from shapely import Polygon

from app.catalogue.dimension import plain
from app.catalogue.hub_parts import AxleSet, Hub, TorqueArm
from app.catalogue.outline import Corner
from app.facts.span import THOUSAND, Span
from app.mechanics.arm_outline import arm_body, index_angles, measures_of, outline_with_holes
from app.mechanics.plane import Shape
from app.mechanics.shell_profile import shell_face_of, steps_of

# Printer, scissors and a hand that holds paper are together no better than this.
PAPER_MM = 1.0
MARK_DIGITS = 4
NOTHING_WANTED = Span(0, 0)


class ArmOnPaper(NamedTuple):
    """An arm as its gauge shows it, in its own frame: the axle at 0, 0 and the bar along +x, in mm.

    outline     the arm as it is cut, its holes with it
    keep_off    the arm at its largest, the clearance its maker wants, and what paper is off by
    keep_off_mm that clearance and the paper's part of it
    stay_deg    where the stay may run as seen from the bar: one bearing for each step, or the least and most
    steps       whether the arm sits at those bearings alone, rather than between them
    """

    outline: Polygon
    keep_off: Shape
    keep_off_mm: float
    reach_mm: tuple[float, float]
    clamp_mm: float
    stay_deg: tuple[float, ...]
    steps: bool


class ShellOnPaper(NamedTuple):
    """The left edge of a motor's shell as its gauge shows it, in mm.

    radius_mm      of its widest step, for sure; keep_off_mm is further out
    face_mm        from the dropout's floor to that step at the furthest; keep_before_mm is before all steps
    """

    radius_mm: float
    keep_off_mm: float
    face_mm: float
    keep_before_mm: float


def arm_on_paper(arm: TorqueArm) -> ArmOnPaper:
    """The shape of an arm and of what has to stay clear around it."""
    wanted = (arm.clearance_mm or NOTHING_WANTED).high / THOUSAND + PAPER_MM
    largest = arm_body(measures_of(arm), 0.0).outer
    angles = index_angles(arm)
    steps = bool(arm.index_angles_deg) or len(angles) == 1
    shown = angles if steps else (angles[0], angles[-1])
    return ArmOnPaper(
        outline=outline_with_holes(arm),
        keep_off=cast("Shape", shapely.buffer(largest, wanted)),
        keep_off_mm=wanted,
        reach_mm=(arm.reach_from_mm.low / THOUSAND, arm.reach_to_mm.high / THOUSAND),
        clamp_mm=arm.clamp_length_mm.high / THOUSAND,
        stay_deg=tuple(-angle for angle in shown),
        steps=steps,
    )


def shell_on_paper(hub: Hub, axle_set: AxleSet) -> ShellOnPaper | None:
    """The shell's edge and face, or None where the maker hasn't given them."""
    steps, face = steps_of(hub), shell_face_of(axle_set)
    if not steps or face is None:
        return None
    widest, first = steps[-1], min(step.inboard_mm.low for step in steps)
    wanted = (hub.shell_clearance_mm or NOTHING_WANTED).high / THOUSAND + PAPER_MM
    return ShellOnPaper(
        radius_mm=widest.radius_mm.low / THOUSAND,
        keep_off_mm=max(step.radius_mm.high for step in steps) / THOUSAND + wanted,
        face_mm=(face.high + widest.inboard_mm.high) / THOUSAND,
        keep_before_mm=(face.low + first) / THOUSAND - wanted,
    )


def arm_mark(arm: TorqueArm) -> str:
    """By which a gauge of this arm is known: its id, and a short mark of all that is drawn of it."""
    drawn = measures_of(arm)
    rings = [drawn.outline, *arm.holes]
    lengths = [*drawn[:3], arm.reach_from_mm, arm.clamp_length_mm, arm.clearance_mm, *arm.clamp_places_mm]
    angles = [Span.exactly(str(angle)) for angle in index_angles(arm)]
    return _mark(arm.id, [*map(_corners, rings), _ends(lengths), _ends(angles)])


def shell_mark(hub: Hub, axle_set: AxleSet) -> str:
    """By which a gauge of this shell on this axle set is known."""
    steps = [each for step in steps_of(hub) for each in (step.radius_mm, step.inboard_mm)]
    return _mark(axle_set.id, [hub.id, _ends([shell_face_of(axle_set), hub.shell_clearance_mm, *steps])])


def gauge_name(arm: TorqueArm, hub: Hub, axle_set: AxleSet) -> str:
    """The name of a printed gauge, as it stands on the paper and beside an answer."""
    return f"{arm_mark(arm)} {shell_mark(hub, axle_set)}"


def _mark(part_id: str, drawn: Iterable[str]) -> str:
    digest = hashlib.sha256("|".join(drawn).encode()).hexdigest()
    return f"{part_id}.{digest[:MARK_DIGITS]}"


def _ends(spans: Iterable[Span | None]) -> str:
    return " ".join("-" if span is None else f"{plain(span.low)}..{plain(span.high)}" for span in spans)


def _corners(ring: Iterable[Corner]) -> str:
    return " ".join(f"{plain(along.low)},{plain(beside.low)}" for along, beside in ring)
