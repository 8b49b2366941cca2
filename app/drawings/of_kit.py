"""The drawings of one bike with one kit, by their names, and which finding each of them explains."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from app.drawings.axle_levels import levels_of
from app.drawings.axle_parts import pieces_of, stack_of
from app.drawings.axle_scene import AxleScene
from app.drawings.axle_section import axle_section
from app.drawings.side_parts import side_of
from app.drawings.side_view import side_view
from app.drawings.span_scale import span_scale
from app.drawings.subject import Subject
from app.drawings.svg import Drawing
from app.report.report import Finding

SIDE_VIEW, AXLE = "side-view", "axle"
# The rules whose findings are seen in a drawing, in the order in which they are asked for it.
EXPLAINS: Mapping[str, tuple[str, ...]] = {
    SIDE_VIEW: (
        *("arm_caliper", "arm_caliper_far", "arm_caliper_wanted", "arm_caliper_running"),
        *("arm_reach", "flat_mount_free_stay"),
    ),
    AXLE: (
        *("shell_caliper", "shell_caliper_wanted", "shell_caliper_running", "rotor_plane"),
        *("rotor_plane_shims", "dropout_width", "rear_end_spread", "quick_release_closing"),
        "cog_beside_dropout",
        *("chain_beside_dropout", "rotor_beside_stay", "cog_beside_cover", "chain_beside_cover"),
    ),
}
# The facts of which at least one must be known.
SHOWS: Mapping[str, tuple[str, ...]] = {
    SIDE_VIEW: ("caliper_nearest_mm", "caliper_line_bearing_deg", "stay_clear_from_mm", "stay_offset_mm"),
    AXLE: ("dropout_width_mm", "rotor_offset_mm"),
}
NOTE = "{title}: {reading}."


def axle_of(subject: Subject) -> Drawing:
    """The axle with all that stands on it."""
    stack = stack_of(subject)
    levels = tuple(levels_of(subject, stack.faces))
    notes = tuple(
        NOTE.format(title=subject.findings[level.rule_id].title, reading=level.text) for level in levels
    )
    return axle_section(AxleScene(tuple(pieces_of(subject, stack)), levels, notes))


def drawing_of(subject: Subject, name: str) -> Drawing | None:
    """The drawing of a kit with this name: one of the two views, or the scale of a rule's finding."""
    if name == AXLE:
        return axle_of(subject)
    if name == SIDE_VIEW:
        return side_view(side_of(subject))
    finding = subject.findings.get(name)
    return None if finding is None else span_scale(finding)


def explained(name: str, findings: Sequence[Finding]) -> str:
    """The first of these findings that a view explains, by its rule; empty where it explains none."""
    seen = EXPLAINS[name]
    return next((finding.rule_id for finding in findings if finding.rule_id in seen), "")


def is_worth_drawing(subject: Subject, name: str) -> bool:
    """Whether enough has been measured for a view to show this bike rather than any."""
    return any(subject.answers.is_known(fact) for fact in SHOWS[name])
