"""What is entered on the counter sheet is saved once, said to be saved, and never lost."""

from __future__ import annotations

import re

import pytest
from playwright.sync_api import Page, expect

pytestmark = pytest.mark.browser


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


def test_a_name_that_is_too_long_is_told_beside_it(page: Page, shop: str) -> None:
    page.goto(f"{shop}/counter")
    page.locator("#job").fill("x" * 61)
    page.locator("#issued_by").focus()

    expect(page.locator("#job-error")).to_have_text(
        "Name or job number must be 60 characters at most. You typed 61."
    )
    page.locator("#job").fill("Job 118")
    page.locator("#issued_by").focus()

    expect(page.locator("#job-error")).to_have_text("")
    expect(page.locator("#saving")).to_contain_text("Saved")


def test_a_sheet_goes_on_as_a_copy_and_opens_by_its_code(page: Page, shop: str) -> None:
    page.goto(f"{shop}/counter")
    page.locator("#smallest_cog").fill("11")
    page.locator("#largest_cog").focus()
    expect(page.locator("#saving")).to_contain_text("Saved")
    code = page.locator("#block-code").inner_text()

    page.get_by_role("button", name="Copy to a new sheet").click()
    expect(page.locator("#block-code")).not_to_have_text(code)
    assert page.input_value("#smallest_cog") == "11"
    page.locator("#code").fill(code.lower().replace("-", " "))
    page.keyboard.press("Enter")

    expect(page).to_have_url(f"{shop}/builds/{code}/counter")


def test_back_from_another_page_shows_the_sheet_as_it_was_left(page: Page, shop: str) -> None:
    page.goto(f"{shop}/counter")
    page.locator("#smallest_cog").fill("11")
    page.locator("#largest_cog").focus()
    expect(page.locator("#saving")).to_contain_text("Saved")
    address = page.url

    page.goto(f"{shop}/privacy")
    page.go_back()

    expect(page).to_have_url(address)
    expect(page.locator("#smallest_cog")).to_have_value("11")


def test_a_verdict_that_fails_is_said_and_the_last_one_stays(page: Page, shop: str) -> None:
    page.goto(f"{shop}/counter")
    page.route("**/counter/live", lambda route: route.fulfill(status=503, body="<h1>Broken</h1>"))
    verdict = page.locator("#best-words").inner_text()

    page.locator("#smallest_cog").fill("11")

    expect(page.locator("#saving")).to_contain_text("The verdict couldn't be worked out.")
    expect(page.locator("#best-words")).to_have_text(verdict)
    expect(page.get_by_role("heading", name="Broken")).to_have_count(0)
