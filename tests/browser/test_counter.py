"""A shop tech at the counter: a bike is typed, judged, saved and opened again, with the keyboard alone."""

from __future__ import annotations

import json
import re
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Browser, Page, expect

from app.facts.fact import ChoiceFact
from app.facts.table import FACTS
from tests.browser.access import barriers

pytestmark = pytest.mark.browser

BIKE = Path(__file__).parents[2] / "seed_data" / "bikes" / "hardtail-148-xd.json"
IN_HAND = "document.activeElement.closest('[data-row]')?.dataset.row"
CARET = "[document.activeElement.id, document.activeElement.selectionStart, window.scrollY]"
ON_SHEET = """() => Object.fromEntries(
  [...document.querySelectorAll("[data-row]")].map((row) => [
    row.dataset.row,
    (row.querySelector(".entry__line") ?? row.querySelector("input:checked"))?.value ?? "",
  ]),
)"""
CONTROLS = "#counter :is(.entry__line, select, button, .button, .choice)"
LEAST_HEIGHT = 32


def typed(value: Any) -> str:  # noqa: ANN401 - whatever a demo bike holds
    """A value of a demo bike as a tech types it."""
    if isinstance(value, dict):
        return (
            f"{value['value']} ± {value['plus_minus']}"
            if "value" in value
            else f"{value['low']}..{value['high']}"
        )
    return str(value)


def demo_bike() -> dict[str, str]:
    """The facts of a demo bike, each as it is typed."""
    bike = json.loads(BIKE.read_text("utf-8"))
    return {name: typed(value) for section in ("bike", "wish") for name, value in bike[section].items()}


def type_in(page: Page, fact: str, text: str) -> None:
    """Answer the fact in hand: a choice by its letter, a number by typing it."""
    kind = FACTS[fact]
    if isinstance(kind, ChoiceFact):
        page.keyboard.press(next(word.key for word in kind.words if word.word == text))
    else:
        page.keyboard.type(text)


def tab_to(page: Page, fact: str) -> None:
    """Press Tab until a fact is in hand."""
    for _ in range(40):
        if page.evaluate(IN_HAND) == fact:
            return
        page.keyboard.press("Tab")
    pytest.fail(f"Tab never came to {fact}")


def judged(page: Page, fact: str) -> str:
    """The words of the verdict at a fact."""
    return page.locator(f"[data-row={fact}] .entry__verdict").inner_text()


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


def test_arrows_go_from_fact_to_fact_and_change_no_answer(page: Page, shop: str) -> None:
    page.goto(f"{shop}/counter")
    page.locator("#rear_brake").focus()

    for _ in range(5):
        page.keyboard.press("ArrowDown")
    assert page.evaluate(IN_HAND) == "frame_rotor_limit_mm"
    page.keyboard.press("ArrowUp")
    page.keyboard.press("Shift+Enter")

    assert page.evaluate(IN_HAND) == "caliper_adapter"
    assert not any(page.evaluate(ON_SHEET).values())


def test_within_a_choice_left_and_right_are_the_browsers_own(page: Page, shop: str) -> None:
    page.goto(f"{shop}/counter")
    page.locator("#rear_brake").focus()

    page.keyboard.press("Space")
    page.keyboard.press("ArrowRight")

    assert page.evaluate(ON_SHEET)["rear_brake"] == "rim"
    assert page.evaluate(IN_HAND) == "rear_brake"


def test_a_letter_chooses_and_the_same_letter_clears(page: Page, shop: str) -> None:
    page.goto(f"{shop}/counter")
    page.locator("#rear_brake").focus()

    page.keyboard.press("d")
    chosen = page.evaluate(ON_SHEET)["rear_brake"]
    page.keyboard.press("D")

    assert chosen == "disc"
    assert page.evaluate(ON_SHEET)["rear_brake"] == ""


def test_a_press_chooses_and_the_same_press_clears(page: Page, shop: str) -> None:
    page.goto(f"{shop}/counter")
    word = page.locator("[data-row=rear_brake] .choice", has_text="Disc")

    word.click()
    chosen = page.evaluate(ON_SHEET)["rear_brake"]
    word.click()

    assert chosen == "disc"
    assert page.evaluate(ON_SHEET)["rear_brake"] == ""


def test_not_known_is_one_key(page: Page, shop: str) -> None:
    page.goto(f"{shop}/counter")
    page.locator("#dropout_width_mm").focus()

    page.keyboard.press("?")
    page.keyboard.press("Enter")
    expect(page.locator("#saving")).to_contain_text("Saved")
    page.reload()

    assert page.input_value("#dropout_width_mm") == "?"
    expect(page.locator("[data-row=dropout_width_mm] .entry__reading")).to_have_text("Not known")


@pytest.mark.parametrize("way", ["Escape", "the button"])
def test_undo_puts_back_what_is_stored(way: str, page: Page, shop: str) -> None:
    page.goto(f"{shop}/counter")
    page.locator("#smallest_cog").focus()
    page.keyboard.type("11")
    page.keyboard.press("Enter")
    expect(page.locator("#saving")).to_contain_text("Saved")
    page.keyboard.press("Shift+Enter")
    page.keyboard.type("13")

    if way == "Escape":
        page.keyboard.press("Escape")
    else:
        page.locator("[data-row=smallest_cog]").get_by_role("button", name="Undo").click()

    assert page.input_value("#smallest_cog") == "11"
    assert page.evaluate(IN_HAND) == "smallest_cog"
    expect(page.locator("[data-row=smallest_cog] [name=undo]")).to_have_count(0)


def test_f2_goes_to_the_fact_that_settles_most(page: Page, shop: str) -> None:
    page.goto(f"{shop}/counter")
    wanted = page.locator("#settles-most").get_attribute("data-fact")

    page.keyboard.press("F2")

    assert page.evaluate(IN_HAND) == wanted
    expect(page.locator("#in-hand")).to_contain_text(FACTS[str(wanted)].how_measured)


def test_no_letter_acts_outside_a_field(page: Page, shop: str) -> None:
    page.goto(f"{shop}/counter")

    page.keyboard.type("sdry?")

    assert not any(page.evaluate(ON_SHEET).values())


def test_pressing_save_again_without_a_change_makes_no_second_revision(page: Page, shop: str) -> None:
    page.goto(f"{shop}/counter")
    page.locator("#smallest_cog").focus()
    page.keyboard.type("11")
    saving, status = page.locator("#saving"), re.compile("as revision A$")

    page.keyboard.press("Control+Enter")
    expect(saving).to_have_text(status)
    with page.expect_response("**/builds/*/counter"):
        page.keyboard.press("Control+Enter")

    expect(saving).to_have_text(status)


def test_an_empty_sheet_says_that_there_is_nothing_to_save(page: Page, shop: str) -> None:
    page.goto(f"{shop}/counter")

    page.keyboard.press("Control+Enter")

    expect(page.locator("#saving")).to_have_text(
        "Not saved. Nothing is answered yet. Answer one fact, then save."
    )
    expect(page).to_have_url(f"{shop}/counter")


def test_what_is_typed_without_a_connection_is_sent_when_it_is_back(page: Page, shop: str) -> None:
    page.goto(f"{shop}/counter")
    page.context.set_offline(True)
    page.locator("#smallest_cog").focus()
    page.keyboard.type("11")
    page.keyboard.press("Enter")
    saving = page.locator("#saving")
    expect(saving).to_contain_text("Not saved: no connection.")

    page.context.set_offline(False)

    expect(saving).to_have_text(re.compile("^Saved [0-9:]{8}$"), timeout=10_000)
    page.reload()
    assert page.input_value("#smallest_cog") == "11"


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
