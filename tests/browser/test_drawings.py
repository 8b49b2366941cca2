"""Drawings in a browser: large enough to be read on a phone, styled by themselves too, whole on paper."""

from __future__ import annotations

import pytest
from playwright.sync_api import Browser, Page

from tests.browser.printed import printed
from tests.browser.saved import save_demo_bike

pytestmark = pytest.mark.browser

DISC, CLOSE = "steel-touring-135-qr", "tape-measured-135"
UNFOLD = "document.querySelectorAll('details').forEach((each) => { each.open = true; })"
SMALLEST_TEXT_PX = """() => Math.min(...[...document.querySelectorAll(".drawing text")].map((text) =>
  parseFloat(getComputedStyle(text).fontSize) * text.getScreenCTM().a))"""
OUTSIDE = """() => [...document.querySelectorAll(".drawing text")].filter((text) => {
  const own = text.getBoundingClientRect(), sheet = text.ownerSVGElement.getBoundingClientRect();
  return own.left < sheet.left - 0.5 || own.right > sheet.right + 0.5 || own.bottom > sheet.bottom + 0.5;
}).map((text) => text.textContent)"""
LINE = "(kind) => getComputedStyle(document.querySelector(kind)).strokeWidth"


@pytest.fixture(scope="module")
def codes(shop: str) -> dict[str, str]:
    """One build that fits with a disc brake, one with close calls."""
    return {name: save_demo_bike(shop, name) for name in (DISC, CLOSE)}


@pytest.mark.parametrize("name", [DISC, CLOSE])
@pytest.mark.parametrize("width", [320, 390, 1366])
def test_words_in_drawings_are_large_enough_and_on_their_sheet(
    page: Page, shop: str, codes: dict[str, str], name: str, width: int
) -> None:
    page.set_viewport_size({"width": width, "height": 800})
    page.goto(f"{shop}/builds/{codes[name]}")
    page.evaluate(UNFOLD)

    assert page.evaluate(SMALLEST_TEXT_PX) >= 12
    assert page.evaluate(OUTSIDE) == []


@pytest.mark.parametrize("view", ["side-view", "axle"])
def test_a_drawing_by_itself_is_styled(browser: Browser, shop: str, codes: dict[str, str], view: str) -> None:
    # A page of its own, for a browser asks for an icon that a drawing can't name.
    page = browser.new_page()
    page.goto(f"{shop}/builds/{codes[DISC]}/drawings/{view}.svg")

    assert page.evaluate(LINE, ".drawing__hatch") == "1px"
    assert page.evaluate(LINE, ".drawing__edge") == "1.5px"
    assert page.evaluate("document.documentElement.getBoundingClientRect().width") <= 400
    page.close()


@pytest.mark.parametrize("paper", ["A4", "Letter"])
def test_drawings_are_whole_on_the_third_page_of_the_sheet(
    page: Page, shop: str, codes: dict[str, str], paper: str
) -> None:
    page.goto(f"{shop}/builds/{codes[DISC]}/sheet?drawings=with")

    pages = printed(page, paper)

    assert len(pages) == 3
    assert "Drawings" in pages[2]
    assert "caliper" in pages[2]
    assert "motor shell" in pages[2]
    assert "caliper" not in pages[1].partition("Drawings")[2]


def test_the_counter_keeps_the_help_for_a_fact_in_sight_over_its_drawing(
    page: Page, shop: str, codes: dict[str, str]
) -> None:
    page.goto(f"{shop}/builds/{codes[DISC]}/counter")
    page.focus("#rotor_offset_mm")

    help_box, drawing = page.locator("#in-hand").bounding_box(), page.locator(".drawing").bounding_box()

    assert help_box
    assert drawing
    assert help_box["y"] + help_box["height"] <= drawing["y"]
    assert page.evaluate(SMALLEST_TEXT_PX) >= 12


def test_the_drawing_at_the_counter_goes_with_the_fact_in_hand(
    page: Page, shop: str, codes: dict[str, str]
) -> None:
    page.goto(f"{shop}/builds/{codes[DISC]}/counter")

    page.focus("#rotor_offset_mm")
    page.keyboard.press("End")
    page.keyboard.type("1")

    page.locator(".drawing title", has_text="The axle").wait_for(state="attached")
