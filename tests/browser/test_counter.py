"""A shop tech at the counter: a bike is typed, judged, saved and opened again, with the keyboard alone."""

from __future__ import annotations

import re

import pytest
from playwright.sync_api import Browser, Page, expect

from app.facts.table import FACTS
from tests.browser.access import barriers
from tests.browser.at_the_counter import IN_HAND, ON_SHEET, demo_bike, tab_to, type_in

pytestmark = pytest.mark.browser

CARET = "[document.activeElement.id, document.activeElement.selectionStart, window.scrollY]"
CONTROLS = "#counter :is(.entry__line, select, button, .button, .choice)"
LEAST_HEIGHT = 32


def test_a_bike_is_typed_saved_and_opened_again_by_keyboard_alone(page: Page, shop: str) -> None:
    bike = demo_bike()
    page.goto(f"{shop}/counter")
    tab_to(page, "frame_material")

    for fact in FACTS:
        assert page.evaluate(IN_HAND) == fact
        if fact in bike:
            type_in(page, fact, bike[fact])
        page.keyboard.press("Enter")
    page.keyboard.press("Control+Enter")

    expect(page.locator("#saving")).to_have_text(re.compile("^Saved .* as revision A$"))
    expect(page.locator("#best-words")).to_have_text(re.compile("^Fits"))
    expect(page).to_have_url(re.compile("/builds/[0-9A-Z]{4}-[0-9A-Z]{4}/counter$"))
    written = page.evaluate(ON_SHEET)
    assert {fact: written[fact] for fact in bike} == bike
    page.reload()
    assert page.evaluate(ON_SHEET) == written
    expect(page.locator("#block-revision")).to_have_text("A")
    page.keyboard.press("F8")
    page.wait_for_url(re.compile("/builds/[0-9A-Z-]{9}/sheet$"))


def test_the_verdict_changes_while_a_number_is_typed(page: Page, shop: str) -> None:
    page.goto(f"{shop}/counter")
    tab_to(page, "frame_material")
    page.keyboard.press("c")
    page.locator("#dropout_kind").focus()
    page.keyboard.press("c")
    page.keyboard.press("Enter")

    page.keyboard.type("100")

    expect(page.locator("[data-row=dropout_width_mm] .verdict")).to_have_text("Doesn't fit")
    expect(page.locator("#best-words")).to_have_text("Doesn't fit")
    assert page.evaluate(IN_HAND) == "dropout_width_mm"


def test_an_answer_moves_neither_focus_nor_caret_nor_the_page(page: Page, shop: str) -> None:
    page.goto(f"{shop}/counter")
    page.locator("#rotor_diameter_mm").focus()
    page.keyboard.type("160")
    page.keyboard.press("ArrowLeft")
    before = page.evaluate(CARET)

    with page.expect_response("**/counter/live"):
        page.keyboard.type("3")
    expect(page.locator("[data-row=rotor_diameter_mm] .entry__reading")).to_have_text("")

    focus, caret, scroll = before
    assert page.evaluate(CARET) == [focus, caret + 1, scroll]
    assert page.input_value("#rotor_diameter_mm") == "1630"


def test_a_half_typed_number_is_a_mistake_only_when_it_is_left(page: Page, shop: str) -> None:
    page.goto(f"{shop}/counter")
    error = page.locator("#dropout_width_mm-error")
    page.locator("#dropout_width_mm").focus()

    with page.expect_response("**/counter/live"):
        page.keyboard.type("1346")
    expect(error).to_have_text("")
    page.keyboard.press("Enter")

    expect(error).to_contain_text("You typed 1346; did you mean 134.6?")
    expect(page.locator("#dropout_width_mm")).to_have_attribute("aria-invalid", "true")
    expect(page.locator("#saving")).to_contain_text("Not saved.")
    assert page.evaluate(IN_HAND) == "socket_depth_mm"


def test_without_a_script_the_same_sheet_is_checked_and_saved(browser: Browser, shop: str) -> None:
    page = browser.new_context(java_script_enabled=False).new_page()
    page.goto(f"{shop}/counter")
    page.locator("[name=rear_brake][value=disc]").check()
    page.locator("#smallest_cog").fill("11")

    page.locator("#smallest_cog").press("Enter")
    expect(page).to_have_url(re.compile("/builds/[0-9A-Z-]{9}/counter$"))
    expect(page.locator("#best-words")).to_have_text("Not settled yet")
    expect(page.locator("#block-revision")).to_have_text("none yet")
    page.get_by_role("button", name="Save").click()

    expect(page.locator("#block-revision")).to_have_text("A")
    assert page.input_value("#smallest_cog") == "11"
    expect(page.locator("[name=rear_brake][value=disc]")).to_be_checked()


@pytest.mark.parametrize("width", [320, 390, 1366])
@pytest.mark.parametrize("state", ["empty", "filled", "wrong"])
def test_nothing_keeps_anybody_out(state: str, width: int, browser: Browser, shop: str) -> None:
    viewport = {"width": width, "height": 768}
    page = browser.new_context(bypass_csp=True, viewport=viewport).new_page()  # type: ignore[arg-type]
    page.goto(f"{shop}/counter")
    if state != "empty":
        page.locator("[name=rear_brake][value=disc]").check()
        page.locator("#dropout_width_mm").fill("134.6" if state == "filled" else "wide")
        page.locator("#smallest_cog").fill("11")
        page.locator("#largest_cog").focus()
        expect(page.locator("[data-row=smallest_cog] .entry__reading")).to_have_text("11")

    assert barriers(page) == []
    assert page.evaluate("document.documentElement.scrollWidth") == width
    heights = page.locator(CONTROLS).evaluate_all("all => all.map(each => each.offsetHeight).filter(Boolean)")
    assert min(heights) >= LEAST_HEIGHT
    page.context.close()
