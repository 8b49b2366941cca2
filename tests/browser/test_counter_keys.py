"""On the counter sheet every key does one thing, and has a button that does the same."""

from __future__ import annotations

import pytest
from playwright.sync_api import Page, expect

from app.facts.table import FACTS
from tests.browser.at_the_counter import IN_HAND, ON_SHEET

pytestmark = pytest.mark.browser


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
