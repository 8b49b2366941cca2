"""A paper gauge is the part itself on paper: its outline, its shell's edge, at their own size."""

from __future__ import annotations

import re
from xml.etree import ElementTree as ET

import pytest
import shapely
from shapely import Polygon

from app.catalogue.hub_parts import TorqueArm
from app.drawings.gauge_paper import PAPER_MM, UNITS_PER_MM, GaugeSheet
from app.drawings.paper_gauge import PaperGauge, find_gauge, paper_gauges
from app.facts.span import Span
from app.mechanics.arm_outline import outline_with_holes
from app.mechanics.paper_gauge import PAPER_MM as PAPER_OFF_MM
from app.mechanics.paper_gauge import arm_mark, arm_on_paper, shell_on_paper
from tests.demo import demo_catalogue

GAUGES = list(paper_gauges(demo_catalogue()))
every_gauge = pytest.mark.parametrize("gauge", GAUGES, ids=lambda gauge: gauge.name)
Corner = tuple[float, float]


def elements(sheet: GaugeSheet) -> list[ET.Element]:
    return list(ET.fromstring(sheet.inline()).iter())  # noqa: S314 - our own drawing


def rings_drawn(sheet: GaugeSheet, kind: str) -> list[list[Corner]]:
    """The rings of one kind on a sheet, in mm on the paper."""
    paths = [each.get("d", "") for each in elements(sheet) if each.get("class") == kind]
    return [_corners(ring) for path in paths for ring in path.split("z") if ring]


def _corners(ring: str) -> list[Corner]:
    numbers = [float(number) for number in re.findall(r"-?[\d.]+", ring)]
    places, (x, y) = [], (0.0, 0.0)
    for step_x, step_y in zip(numbers[::2], numbers[1::2], strict=True):
        x, y = x + step_x, y + step_y
        places.append((x / UNITS_PER_MM, y / UNITS_PER_MM))
    return places


def on_arm(corner: Corner, axle: Corner) -> Corner:
    """A place on the paper in the arm's own frame: along the bar, and to the seatstay's side."""
    return corner[1] - axle[1], axle[0] - corner[0]


def arm_part(arm_id: str) -> TorqueArm:
    return next(arm for arm in demo_catalogue().torque_arms if arm.id == arm_id)


def of(arm_id: str) -> PaperGauge:
    return next(gauge for gauge in GAUGES if gauge.arm.id == arm_id)


def test_there_is_a_gauge_for_every_arm_with_every_axle_set_it_goes_on() -> None:
    pairs = [(arm.id, each) for arm in demo_catalogue().torque_arms for each in arm.axle_sets]

    assert [(gauge.arm.id, gauge.axle_set.id) for gauge in GAUGES] == pairs


@every_gauge
def test_every_gauge_keeps_its_size_and_stays_on_both_kinds_of_paper(gauge: PaperGauge) -> None:
    for sheet in gauge.sheets():
        root = elements(sheet)[0]
        drawn = [
            corner
            for kind in ("gauge__cut", "gauge__cut-first")
            for ring in rings_drawn(sheet, kind)
            for corner in ring
        ]

        assert (root.get("width"), root.get("height")) == ("190mm", "255mm")
        assert root.get("viewBox") == "0 0 1900 2550"
        assert all(0 <= x <= PAPER_MM[0] and 0 <= y <= PAPER_MM[1] for x, y in drawn)


@every_gauge
def test_every_sheet_says_what_it_is_and_how_it_is_checked(gauge: PaperGauge) -> None:
    for sheet in gauge.sheets():
        text = " ".join(each.text or "" for each in elements(sheet) if each.tag == "text")

        assert gauge.name in text
        assert gauge.axle_set.name in text
        assert "100 mm" in text
        assert "4 in" in text
        assert gauge.name in sheet.description
        assert sheet.title.startswith("Paper gauge: ")


@pytest.mark.parametrize("arm", demo_catalogue().torque_arms, ids=lambda arm: arm.id)
def test_the_outline_on_paper_is_that_of_the_part(arm: TorqueArm) -> None:
    sheets = of(arm.id).sheets()[:-1]
    offsets = [(151.0, 38.0), (151.0, 34.0 - 190.0)]

    pieces = [
        [[on_arm(corner, axle) for corner in ring] for ring in rings_drawn(sheet, "gauge__cut")]
        for sheet, axle in zip(sheets, offsets, strict=False)
    ]
    found = shapely.union_all([_shape(rings) for rings in pieces])

    assert shapely.hausdorff_distance(found, outline_with_holes(arm)) < 0.02
    assert found.symmetric_difference(outline_with_holes(arm)).area < 1.0


def _shape(rings: list[list[Corner]]) -> Polygon:
    """Holes lie inside the largest ring."""
    whole, *holes = sorted((Polygon(ring) for ring in rings), key=lambda ring: -ring.area)
    shape = shapely.difference(whole, shapely.union_all(holes))
    assert isinstance(shape, Polygon)
    return shape


def test_only_the_arm_that_is_too_long_for_one_sheet_takes_two() -> None:
    counts = {gauge.arm.id: len(gauge.sheets()) for gauge in GAUGES}

    assert counts.pop("arm-twin") == 3
    assert set(counts.values()) == {2}


def test_both_halves_of_a_long_arm_have_the_same_marks_to_join_them_by() -> None:
    first, second, _ = of("arm-twin").sheets()

    marks = [
        {
            (round(x - 151, 2), round(y - join, 2))
            for ring in rings_drawn(sheet, "gauge__fine")
            for x, y in ring
        }
        for sheet, join in ((first, 38.0 + 190.0), (second, 34.0))
    ]

    diamonds = {(beside + aside, along) for beside in (-16, 0, 16) for aside, along in DIAMOND}
    assert diamonds <= marks[0]
    assert diamonds <= marks[1]


DIAMOND = [(2.0, 0.0), (-2.0, 0.0), (0.0, 2.0), (0.0, -2.0)]


@pytest.mark.parametrize("arm", demo_catalogue().torque_arms, ids=lambda arm: arm.id)
def test_the_dashed_line_keeps_the_clearance_that_the_maker_wants(arm: TorqueArm) -> None:
    drawn = arm_on_paper(arm)
    wanted = (arm.clearance_mm or Span(0, 0)).high / 1000

    nearest = shapely.distance(drawn.keep_off.boundary, drawn.outline)

    assert nearest >= wanted + PAPER_OFF_MM - 0.05


def test_the_shell_on_paper_is_as_large_as_the_part_says() -> None:
    gauge = find_gauge(demo_catalogue(), "arm-long", "weir-142-thru")
    assert gauge is not None

    drawn = shell_on_paper(gauge.hub, gauge.axle_set)
    (ring,) = rings_drawn(gauge.sheets()[-1], "gauge__cut")
    radii = [((x - 183) ** 2 + (y - 150) ** 2) ** 0.5 for x, y in ring]

    assert drawn is not None
    assert drawn.radius_mm == 113.1
    assert max(radii) == pytest.approx(113.1, abs=0.02)
    assert (drawn.keep_off_mm, drawn.face_mm) == pytest.approx((113.7 + 1.2 + 1.0, 35.6 + 3.2))
    assert drawn.keep_before_mm == pytest.approx(35.2 - 3.2 - 1.2 - 1.0)


def test_a_shell_without_a_size_is_said_not_to_be_drawn() -> None:
    *_, shell = of("arm-fat").sheets()

    assert "The maker hasn't given the shell's size" in shell.description
    assert rings_drawn(shell, "gauge__cut") == []


def test_a_gauge_of_an_arm_that_was_changed_has_another_mark() -> None:
    arm = arm_part("arm-long")

    renamed = arm.model_copy(update={"name": "Long arm"})
    longer = arm.model_copy(update={"reach_to_mm": Span.exactly("173.5")})

    assert arm_mark(renamed) == arm_mark(arm)
    assert arm_mark(longer) != arm_mark(arm)
    assert arm_mark(longer).startswith("arm-long.")


def test_an_arm_and_an_axle_set_that_do_not_go_together_have_no_gauge() -> None:
    assert find_gauge(demo_catalogue(), "arm-twin", "weir-142-thru") is None
