"""Looks through a page for what keeps people out of it."""

from __future__ import annotations

from pathlib import Path

from playwright.sync_api import Page

AXE = Path(__file__).parent / "vendor" / "axe-4.14.1.min.js"
BRIEFLY = """async () => {
  const { violations } = await axe.run(document, { resultTypes: ["violations"] });
  return violations.map(({ id, nodes }) => `${id}: ${nodes[0].html}`);
}"""


def barriers(page: Page) -> list[str]:
    """What axe finds on a page, each with one place; the page's context must let scripts in."""
    page.add_script_tag(path=AXE)
    found: list[str] = page.evaluate(BRIEFLY)
    return found
