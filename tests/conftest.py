"""Settings of every test run: how many draws the laws get, and what happens where there is no Chromium."""

import os
import shutil

import pytest
from hypothesis import HealthCheck, is_hypothesis_test, settings

LONG = os.environ.get("AXLEWRIGHT_LONG") == "1"
CHROMIUM_NAMES = ("chromium", "chromium-browser", "google-chrome")
CHROMIUM = next(filter(None, map(shutil.which, CHROMIUM_NAMES)), None)
LEFT_OUT = pytest.StashKey[int]()

# Two cores that are shared with other work miss any deadline now and then, and it would tell nothing.
SLOW_MACHINE = [HealthCheck.too_slow]
settings.register_profile(
    "default", max_examples=20, deadline=None, derandomize=True, suppress_health_check=SLOW_MACHINE
)
settings.register_profile(
    "long", max_examples=100, deadline=None, derandomize=True, suppress_health_check=SLOW_MACHINE
)
settings.load_profile("long" if LONG else "default")


@pytest.fixture(scope="session")
def long_run() -> bool:
    """Whether this run may take minutes for one test: many more kills, requests or bikes."""
    return LONG


@pytest.fixture(scope="session")
def chromium() -> str:
    """Path of the browser that the journeys run in; only tests marked `browser` may ask for it."""
    assert CHROMIUM is not None, "mark this test with pytest.mark.browser"
    return CHROMIUM


def pytest_itemcollected(item: pytest.Item) -> None:
    """Count every law among the tests that a long run repeats with more draws."""
    if is_hypothesis_test(getattr(item, "function", None)):
        item.add_marker(pytest.mark.long)


@pytest.hookimpl(trylast=True)
def pytest_collection_modifyitems(config: pytest.Config, items: list[pytest.Item]) -> None:
    """Leave the browser's tests out where there is no browser; CI, which installs one, must not."""
    in_browser = [item for item in items if item.get_closest_marker("browser")]
    if CHROMIUM or not in_browser:
        return
    if os.environ.get("CI") == "true":
        raise pytest.UsageError("Chromium is missing, and CI must not leave the browser's tests out.")

    items[:] = [item for item in items if item not in in_browser]
    config.hook.pytest_deselected(items=in_browser)
    config.stash[LEFT_OUT] = len(in_browser)


def pytest_terminal_summary(terminalreporter: pytest.TerminalReporter, config: pytest.Config) -> None:
    """Say in one plain line which tests were left out, and what to install for them."""
    if left_out := config.stash.get(LEFT_OUT, 0):
        terminalreporter.write_line(f"{left_out} browser tests left out: no Chromium found on this machine.")
    elif not CHROMIUM and config.getoption("numprocesses", None):
        # The processes that collected the tests keep the number to themselves.
        terminalreporter.write_line("Browser tests left out: no Chromium found on this machine.")
