"""Which view stands beside the counter sheet: that of the place where the fact in hand is measured."""

from __future__ import annotations

from markupsafe import Markup

from app.drawings.of_kit import AXLE, SIDE_VIEW
from app.facts.answers import Answers
from app.report.build import Checker
from app.report.report import Report
from app.web.figures import inline, view_of

# What is measured along the axle is seen in its section, all else from the side.
ALONG_THE_AXLE = frozenset(
    """dropout_width_mm dropout_kind socket_depth_mm dropout_thickness_mm rotor_offset_mm rotor_thickness_mm
    caliper_inboard_nearest_mm caliper_inboard_depth_mm caliper_outboard_depth_mm cassette_interface
    cassette_speeds smallest_cog largest_cog chainline_mm""".split()
)


def drawing_beside(report: Report, answers: Answers, checker: Checker | None, in_hand: str) -> Markup:
    """The view for the fact in hand, or the other one where that can't be drawn yet; nothing without any."""
    first, second = (AXLE, SIDE_VIEW) if in_hand in ALONG_THE_AXLE else (SIDE_VIEW, AXLE)
    drawing = view_of(report, answers, checker, first) or view_of(report, answers, checker, second)
    return Markup() if drawing is None else inline(drawing)
