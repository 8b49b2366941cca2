"""The pages of a build and the rule book in a browser: open to everybody, at every width, in every state."""

from __future__ import annotations

from collections.abc import Iterator

import pytest
from playwright.sync_api import Browser, Page

from tests.browser.access import barriers
from tests.browser.saved import save_demo_bike
from tests.report.bikes import BIKES, report_on

pytestmark = pytest.mark.browser
# One demo bike for each verdict.
BY_STATE = {report_on(name).state: name for name in BIKES}
PATHS = ("", "/compare", "/moved", "/sheet")
# Alike in every state.
PATHS_OF_ONE = ("/compare?rows=all", "/revisions", "/revisions/1", "/sheet?print=large")
WIDTHS = (320, 390, 1366)
UNFOLD = "document.querySelectorAll('details').forEach((each) => { each.open = true; })"


@pytest.fixture(scope="module")
def looked_at(browser: Browser) -> Iterator[Page]:
    """A page into which axe may be put."""
    context = browser.new_context(bypass_csp=True)
    yield context.new_page()
    context.close()


@pytest.fixture(scope="module")
def codes(shop: str) -> dict[str, str]:
    """A build in every state."""
    return {state: save_demo_bike(shop, name) for state, name in BY_STATE.items()}


def found_at_every_width(page: Page, address: str) -> list[str]:
    """What keeps people out of a page, and where it is wider than the window."""
    page.goto(address)
    page.evaluate(UNFOLD)
    found = []
    for width in WIDTHS:
        page.set_viewport_size({"width": width, "height": 800})
        found += [f"{width}: {barrier}" for barrier in barriers(page)]
        if page.evaluate("document.documentElement.scrollWidth") > width:
            found.append(f"{width}: wider than the window")
    return found


def test_there_is_a_demo_bike_for_each_verdict() -> None:
    assert set(BY_STATE) == {"fit", "care", "open", "close", "no"}


@pytest.mark.parametrize(
    ("state", "path"),
    [*((state, path) for state in BY_STATE for path in PATHS), *(("care", path) for path in PATHS_OF_ONE)],
)
def test_nothing_keeps_people_out_of_a_page_about_a_build(
    state: str, path: str, looked_at: Page, shop: str, codes: dict[str, str]
) -> None:
    assert found_at_every_width(looked_at, f"{shop}/builds/{codes[state]}{path}") == []


@pytest.mark.parametrize(
    "path",
    ["/rules", "/rules/dropout_width", "/rules/slot_direction", "/builds/7Q4K-2M9Y", "/builds/7Q4K-2M9X"],
)
def test_nothing_keeps_people_out_of_the_rule_book_or_an_unknown_build(
    path: str, looked_at: Page, shop: str
) -> None:
    assert found_at_every_width(looked_at, f"{shop}{path}") == []


def test_a_link_to_a_settled_finding_unfolds_it(page: Page, shop: str, codes: dict[str, str]) -> None:
    best = report_on(BY_STATE["care"]).best
    assert best
    passed = next(each for each in best.findings if each.state == "fit")

    page.goto(f"{shop}/builds/{codes['care']}#{passed.rule_id}")

    assert page.locator(f"#{passed.rule_id}").is_visible()


def test_the_way_from_the_result_to_the_sheet_needs_no_script(
    browser: Browser, shop: str, codes: dict[str, str]
) -> None:
    context = browser.new_context(java_script_enabled=False)
    page = context.new_page()
    page.goto(f"{shop}/builds/{codes['care']}")

    page.get_by_role("link", name="Print", exact=True).click()

    assert page.get_by_role("heading", level=1).inner_text() == "Workshop sheet"
    page.get_by_role("link", name="Result").click()
    page.get_by_text("Other kits:").click()
    page.get_by_role("link", name="Compare the kits side by side").click()
    page.get_by_role("link", name="Show all rows").click()
    assert page.get_by_role("link", name="Show only what differs").is_visible()
    context.close()


def test_the_next_thing_to_do_leads_to_its_place_on_the_counter_sheet(
    page: Page, shop: str, codes: dict[str, str]
) -> None:
    ask = report_on(BY_STATE["close"]).ask_next[0]
    page.goto(f"{shop}/builds/{codes['close']}")

    page.locator(".next .button").click()

    assert page.url.endswith(f"/counter#{ask.fact}")
    assert page.locator(f"#{ask.fact}").is_visible()
