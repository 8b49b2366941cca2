"""Takes the README's pictures anew, and with a folder's name every page at phone and counter width besides.

`python -m tests.screenshots.take` writes beside this file; `python -m tests.screenshots.take FOLDER` writes
all pages there, to be looked at after a change.
"""

from __future__ import annotations

import json
import shutil
import sys
import tempfile
import urllib.request
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from playwright.sync_api import Browser, sync_playwright

from tests.browser.conftest import FLAGS, served
from tests.demo import SEED_DATA

HERE = Path(__file__).parent
PHONE, COUNTER = {"width": 390, "height": 844}, {"width": 1366, "height": 768}
BIKES = ("steel-touring-135-qr", "hardtail-148-xd", "gravel-142-flat-mount", "tape-measured-135")
OF_NO_BUILD = ("/", "/counter", "/rules", "/rules/dropout_width", "/privacy", "/not-here")
OF_A_BUILD = ("", "/counter", "/compare", "/revisions", "/sheet")


def saved_build(address: str, bike: str) -> str:
    """Save a demo bike by the API, and give its code back."""
    data = json.loads((SEED_DATA / "bikes" / f"{bike}.json").read_text("utf-8"))
    body = json.dumps(
        {"bike": data["bike"], "wish": data.get("wish", {}), "issued_by": "Demo bench"}
    ).encode()
    request = urllib.request.Request(  # noqa: S310 - an address of our own
        f"{address}/api/v1/builds", body, {"Content-Type": "application/json"}
    )
    with urllib.request.urlopen(request) as answer:  # noqa: S310 - an address of our own
        code: str = json.load(answer)["code"]
    return code


@contextmanager
def a_browser() -> Iterator[Browser]:
    """The machine's own Chromium."""
    path = shutil.which("chromium") or shutil.which("chromium-browser") or shutil.which("google-chrome")
    with sync_playwright() as playwright:
        browser = playwright.chromium.launch(executable_path=path, args=FLAGS)
        yield browser
        browser.close()


def take(browser: Browser, address: str, path: Path, size: dict[str, int], *, whole: bool) -> None:
    """One picture of one page."""
    context = browser.new_context(viewport=size)  # type: ignore[arg-type]
    page = context.new_page()
    page.goto(address, wait_until="networkidle")
    page.screenshot(path=path, full_page=whole)
    context.close()


def of_the_readme(browser: Browser, address: str) -> None:
    """The counter sheet, a result and the printed sheet."""
    code = saved_build(address, "hardtail-148-xd")
    take(browser, f"{address}/builds/{code}/counter", HERE / "counter.png", COUNTER, whole=False)
    take(browser, f"{address}/builds/{code}", HERE / "result.png", COUNTER, whole=False)
    take(browser, f"{address}/builds/{code}/sheet", HERE / "sheet.png", COUNTER, whole=False)


def of_every_page(browser: Browser, address: str, folder: Path) -> None:
    """Every page at phone and counter width, for some bikes that come out differently."""
    folder.mkdir(parents=True, exist_ok=True)
    pages = {path.strip("/").replace("/", "-") or "front": path for path in OF_NO_BUILD}
    for bike in BIKES:
        code = saved_build(address, bike)
        pages |= {f"{bike}{path.replace('/', '-')}": f"/builds/{code}{path}" for path in OF_A_BUILD}
    for name, path in pages.items():
        for size in (PHONE, COUNTER):
            take(browser, f"{address}{path}", folder / f"{name}-{size['width']}.png", size, whole=True)


def main(arguments: list[str]) -> int:
    """Serve a shop of its own, and take the pictures."""
    with tempfile.TemporaryDirectory() as data, served(Path(data)) as address, a_browser() as browser:
        if arguments:
            of_every_page(browser, address, Path(arguments[0]))
        else:
            of_the_readme(browser, address)
    return 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
