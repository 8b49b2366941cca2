"""The workshop sheet on paper: two pages, nothing cut, no row split, and a draft that can't be mistaken."""

from __future__ import annotations

from collections.abc import Iterator

import pytest
from playwright.sync_api import Browser, Page

from tests.browser.printed import holds, letters, printed, rows_of, runs_through, titles_of
from tests.browser.saved import save_demo_bike
from tests.report.bikes import BIKES, report_on

pytestmark = pytest.mark.browser
every_bike = pytest.mark.parametrize("name", BIKES)
CARES = next(name for name in BIKES if report_on(name).state == "care")
DRAFT = "DRAFT, NOT FOR BUILDING"
POINT_PX = 96 / 72
MILLIMETRE_PX = 96 / 25.4
SIZES = """() => [...document.querySelectorAll(".sheet *")]
  .filter((each) => each.checkVisibility() && each.innerText && !each.children.length)
  .map((each) => [parseFloat(getComputedStyle(each).fontSize), each.innerText])"""


@pytest.fixture(scope="module")
def paper(browser: Browser) -> Iterator[Page]:
    """A page to print from."""
    context = browser.new_context()
    yield context.new_page()
    context.close()


@pytest.fixture(scope="module")
def codes(shop: str) -> dict[str, str]:
    """The code of every demo bike in the shop."""
    return {name: save_demo_bike(shop, name) for name in BIKES}


def open_sheet(paper: Page, shop: str, code: str, query: str = "") -> None:
    paper.goto(f"{shop}/builds/{code}/sheet{query}")


@every_bike
@pytest.mark.parametrize("size", ["A4", "Letter"])
def test_a_sheet_has_two_pages_at_most_nothing_is_cut_and_each_page_says_what_it_is(
    size: str, name: str, paper: Page, shop: str, codes: dict[str, str]
) -> None:
    open_sheet(paper, shop, codes[name])

    pages = [letters(text) for text in printed(paper, size)]

    assert 1 <= len(pages) <= 2
    assert [row for row in rows_of(paper) if not any(holds(page, row) for page in pages)] == []
    assert [title for title in titles_of(paper) if not runs_through(pages, title)] == []
    is_draft = report_on(name).state not in {"fit", "care"}
    for number, text in enumerate(pages, start=1):
        assert letters(f"page {number} of {len(pages)}") in text
        assert letters(f"{codes[name]}, revision A") in text
        assert (letters(DRAFT) in text) is is_draft


def test_a_superseded_sheet_says_by_which_on_every_page(paper: Page, shop: str) -> None:
    code = save_demo_bike(shop, CARES)
    paper.goto(f"{shop}/builds/{code}/counter")
    paper.keyboard.press("Control+Enter")
    paper.get_by_text("as revision B").wait_for()

    open_sheet(paper, shop, code, "?revision=1")

    pages = printed(paper, "A4")
    assert len(pages) == 2
    assert all(letters("SUPERSEDED BY REVISION B") in letters(text) for text in pages)


def sizes(paper: Page) -> list[tuple[float, str]]:
    paper.emulate_media(media="print")
    found: list[tuple[float, str]] = paper.evaluate(SIZES)
    return found


@pytest.mark.parametrize("name", ["almost-empty", CARES])
def test_no_letter_is_smaller_than_eight_points(
    name: str, paper: Page, shop: str, codes: dict[str, str]
) -> None:
    open_sheet(paper, shop, codes[name])

    assert [text for size, text in sizes(paper) if size < 8 * POINT_PX - 0.01] == []


def test_large_print_is_eighteen_points_throughout(paper: Page, shop: str, codes: dict[str, str]) -> None:
    open_sheet(paper, shop, codes[CARES], "?print=large")

    assert [text for size, text in sizes(paper) if size < 18 * POINT_PX - 0.01] == []
    pages = [letters(text) for text in printed(paper, "A4")]
    texts = [text for row in rows_of(paper) for text in row]
    assert [text for text in texts if not runs_through(pages, text)] == []


def test_the_code_is_thirty_millimetres_wide(paper: Page, shop: str, codes: dict[str, str]) -> None:
    open_sheet(paper, shop, codes[CARES])
    paper.emulate_media(media="print")

    box = paper.locator(".sheet__qr").bounding_box()

    assert box
    assert box["width"] == pytest.approx(30 * MILLIMETRE_PX, abs=0.5)
    assert box["height"] == pytest.approx(30 * MILLIMETRE_PX, abs=0.5)
