"""A shop that is served for real, and a browser that visits it."""

from __future__ import annotations

import socket
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from threading import Thread
from time import sleep

import pytest
import uvicorn
from playwright.sync_api import Browser, ConsoleMessage, Page, sync_playwright

from app.web.app import create_app
from app.web.settings import Settings

FLAGS = [
    "--headless",
    "--no-sandbox",
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
]
A_MOMENT_S = 0.02
# A browser tells of every answer that isn't a success; these are part of the conversation.
EXPECTED = ("status of 422", "status of 503", "ERR_INTERNET_DISCONNECTED", "Failed to fetch")


@pytest.fixture(scope="session")
def browser(chromium: str) -> Iterator[Browser]:
    """One browser for all journeys; each opens a profile of its own in it."""
    with sync_playwright() as playwright:
        browser = playwright.chromium.launch(executable_path=chromium, args=FLAGS)
        yield browser
        browser.close()


@pytest.fixture(scope="session")
def shop(tmp_path_factory: pytest.TempPathFactory) -> Iterator[str]:
    """The address of a shop that is open for the whole run, with a store of its own."""
    with served(tmp_path_factory.mktemp("shop")) as address:
        yield address


@pytest.fixture
def page(browser: Browser) -> Iterator[Page]:
    """A page at the counter, 1366 by 768, on which nothing may go wrong unsaid."""
    context = browser.new_context(viewport={"width": 1366, "height": 768})
    page = context.new_page()
    faults: list[str] = []
    page.on("pageerror", lambda error: faults.append(str(error)))
    page.on("console", lambda message: faults.extend(_fault_in(message)))
    yield page
    context.close()
    assert faults == []


def _fault_in(message: ConsoleMessage) -> list[str]:
    is_fault = message.type in {"error", "warning"} and not any(part in message.text for part in EXPECTED)
    return [message.text] if is_fault else []


@contextmanager
def served(folder: Path) -> Iterator[str]:
    listening = socket.socket()
    listening.bind(("127.0.0.1", 0))
    app = create_app(Settings(data_folder=folder))
    server = uvicorn.Server(uvicorn.Config(app, log_level="warning", access_log=False))
    thread = Thread(target=server.run, args=([listening],))
    thread.start()
    while not server.started:
        sleep(A_MOMENT_S)
    yield f"http://127.0.0.1:{listening.getsockname()[1]}"
    server.should_exit = True
    thread.join()
