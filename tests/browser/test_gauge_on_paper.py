"""A gauge that comes out of the printer has every dimension of the part, on A4 as on Letter."""

from __future__ import annotations

from collections.abc import Iterator
from io import BytesIO
from math import hypot

import pytest
import shapely
from playwright.sync_api import Browser, Page
from pypdf import PdfReader

from app.drawings.paper_gauge import PaperGauge, find_gauge
from app.mechanics.arm_outline import outline_with_holes
from app.mechanics.paper_gauge import shell_on_paper
from tests.browser.paths_in_pdf import MmPath, paths_in
from tests.demo import demo_catalogue

pytestmark = pytest.mark.browser
CLOSE_MM = 0.2
on_both_papers = pytest.mark.parametrize("size", ["A4", "Letter"])
PAPERS_MM = {"A4": (210.0, 297.0), "Letter": (215.9, 279.4)}


@pytest.fixture(scope="module")
def paper(browser: Browser) -> Iterator[Page]:
    """A page to print from."""
    context = browser.new_context()
    yield context.new_page()
    context.close()


def gauge_of(arm: str, axle_set: str) -> PaperGauge:
    found = find_gauge(demo_catalogue(), arm, axle_set)
    assert found is not None
    return found


def printed(paper: Page, shop: str, gauge: PaperGauge, size: str) -> PdfReader:
    paper.goto(f"{shop}/gauges/{gauge.arm.id}/{gauge.axle_set.id}")
    return PdfReader(BytesIO(paper.pdf(format=size)))


def lengths(paths: list[MmPath]) -> list[float]:
    """Of every straight line that runs across the sheet."""
    ends = [(path[0], path[1]) for path in paths if len(path) == 2]
    return [abs(one[0] - two[0]) for one, two in ends if abs(one[1] - two[1]) < 0.01]


def unmatched(
    paths: list[MmPath], wanted: list[tuple[float, float]], axle: tuple[float, float]
) -> list[object]:
    """The corners that no path of the sheet comes within the tolerance of."""
    found = [corner for path in paths for corner in path]
    places = [(axle[0] - beside, axle[1] + along) for along, beside in wanted]
    return [place for place in places if min(hypot(x - place[0], y - place[1]) for x, y in found) > CLOSE_MM]


@on_both_papers
@pytest.mark.parametrize(
    ("arm", "axle_set"),
    [("arm-long", "weir-142-thru"), ("arm-short", "weir-135-qr"), ("arm-fat", "penstock-177-thru")],
)
def test_the_printed_arm_has_every_corner_of_the_part(
    arm: str, axle_set: str, size: str, paper: Page, shop: str
) -> None:
    gauge = gauge_of(arm, axle_set)
    outline = outline_with_holes(gauge.arm)
    wanted = [
        (along, beside) for ring in (outline.exterior, *outline.interiors) for along, beside in ring.coords
    ]

    paths = paths_in(printed(paper, shop, gauge, size).pages[0]).drawn

    assert len(wanted) > 20
    assert unmatched(paths, wanted, (10 + 151.0, 10 + 38.0)) == []


@on_both_papers
def test_both_bars_are_as_long_as_they_say_on_every_sheet(size: str, paper: Page, shop: str) -> None:
    pages = printed(paper, shop, gauge_of("arm-twin", "sluice-142-thru"), size).pages

    assert len(pages) == 3
    for page in pages:
        found = lengths(paths_in(page).drawn)
        assert any(abs(length - 100.0) < CLOSE_MM / 2 for length in found)
        assert any(abs(length - 101.6) < CLOSE_MM / 2 for length in found)


@on_both_papers
def test_a_long_arm_on_two_sheets_is_as_long_as_the_part(size: str, paper: Page, shop: str) -> None:
    gauge = gauge_of("arm-twin", "sluice-142-thru")
    outline = outline_with_holes(gauge.arm)
    first, second, _ = printed(paper, shop, gauge, size).pages

    near = [(along, beside) for along, beside in outline.exterior.coords if along < 190]
    far = [(along - 190, beside) for along, beside in outline.exterior.coords if along > 190]

    assert far
    assert unmatched(paths_in(first).drawn, near, (10 + 151.0, 10 + 38.0)) == []
    assert unmatched(paths_in(second).drawn, far, (10 + 151.0, 10 + 34.0)) == []


def places_at(radius_mm: float, paths: list[MmPath]) -> int:
    """How many corners are so far from the axle of the shell's sheet."""
    radii = [hypot(x - 10 - 183.0, y - 10 - 150.0) for path in paths for x, y in path]
    return sum(abs(radius - radius_mm) < CLOSE_MM for radius in radii)


@on_both_papers
def test_the_printed_shell_has_its_radius(size: str, paper: Page, shop: str) -> None:
    gauge = gauge_of("arm-long", "weir-142-thru")
    drawn = shell_on_paper(gauge.hub, gauge.axle_set)
    assert drawn is not None

    edge, dashes = paths_in(printed(paper, shop, gauge, size).pages[1])

    assert places_at(drawn.radius_mm, edge) > 90
    assert places_at(drawn.keep_off_mm, dashes) > 90


@on_both_papers
def test_nothing_but_the_sheets_is_printed_and_nothing_is_cut(size: str, paper: Page, shop: str) -> None:
    reader = printed(paper, shop, gauge_of("arm-long", "weir-142-thru"), size)
    width, height = PAPERS_MM[size]

    assert len(reader.pages) == 2
    for page in reader.pages:
        text = page.extract_text()
        assert "Measure the bar" in text
        assert "Counter sheet" not in text
        assert "Ask the shop" not in text
        box = shapely.box(0, 0, width, height)
        assert all(shapely.Point(corner).within(box) for path in paths_in(page).drawn for corner in path)


def test_a_gauge_is_no_larger_than_the_screen_of_a_phone(browser: Browser, shop: str) -> None:
    context = browser.new_context(viewport={"width": 320, "height": 640})
    page = context.new_page()

    page.goto(f"{shop}/gauges/arm-long/weir-142-thru")

    assert page.evaluate("document.documentElement.scrollWidth") == 320
    context.close()
