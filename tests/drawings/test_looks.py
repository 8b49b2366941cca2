"""Every class in a drawing has a style, and no element brings looks of its own."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from app.drawings.axle_section import axle_section
from app.drawings.side_view import side_view
from app.drawings.span_scale import span_scale
from app.drawings.svg import Drawing
from app.report.report import Finding, Measured
from tests.drawings.read_back import read_back
from tests.drawings.scenes import axle_scene, side_scene

STYLES = Path(__file__).parents[2] / "static" / "css" / "drawing.css"
# Groups that say what belongs together.
GROUPS = {"drawing__limits", "drawing__dimension", "drawing__detail"}
LARGEST_BYTES = 9_000


def scale() -> Drawing:
    finding = Finding(
        "slot_width", "Slot", "axle", "close", "cantTell", "B", "", "", "", "", (), (), unit="mm",
        measured=Measured((9_500, 10_500), (9_800, 9_900), None, 1),
    )  # fmt: skip
    drawn = span_scale(finding)
    assert drawn
    return drawn


DRAWINGS = [
    pytest.param(side_view(side_scene()), id="side view"),
    pytest.param(side_view(side_scene(5.0)), id="side view with an overlap"),
    pytest.param(axle_section(axle_scene()), id="axle"),
    pytest.param(scale(), id="scale"),
]


@pytest.mark.parametrize("drawing", DRAWINGS)
def test_every_class_is_styled(drawing: Drawing) -> None:
    styled = set(re.findall(r"\.([a-z][a-z0-9_-]*)", STYLES.read_text(encoding="utf-8")))

    assert read_back(drawing).classes() - styled <= GROUPS


@pytest.mark.parametrize("drawing", DRAWINGS)
def test_no_element_has_a_style_of_its_own(drawing: Drawing) -> None:
    assert "style=" not in drawing.inline()


@pytest.mark.parametrize("drawing", DRAWINGS)
def test_a_drawing_is_a_few_kilobytes(drawing: Drawing) -> None:
    assert len(drawing.inline().encode()) <= LARGEST_BYTES
