"""Two machines that test the same commit test the same packages: each is pinned, installed and hashed."""

import re
from importlib import metadata
from pathlib import Path

import pytest

from app.bootstrap.pins import differences, plain, read_pins

ROOT = Path(__file__).parents[2]
PYPROJECT = (ROOT / "pyproject.toml").read_text(encoding="utf-8")
PINS = read_pins(PYPROJECT)
HASHES = (ROOT / ".ci" / "requirements.txt").read_text(encoding="utf-8")
REQUIREMENT = re.compile(r"^(?P<name>[\w.-]+)==(?P<version>\S+).*\\$", re.MULTILINE)
FIRST_NAME = re.compile(r"^[\w.-]+")


def reached_from(name: str, found: set[str]) -> set[str]:
    """Names of all installed packages that a package needs, and those need in their turn."""
    for requirement in metadata.requires(name) or []:
        needed = plain(FIRST_NAME.findall(requirement)[0])
        if "extra ==" not in requirement and needed not in found and is_installed(needed):
            reached_from(needed, found | {needed})
            found |= {needed} | reached_from(needed, found | {needed})
    return found


def is_installed(name: str) -> bool:
    return any(metadata.distributions(name=name))


def test_every_installed_package_has_the_pinned_version() -> None:
    installed = tuple(pin for pin in PINS.environment if is_installed(pin.name))

    assert differences(installed) == []


def test_everything_that_the_application_and_its_tests_need_is_installed() -> None:
    assert differences(PINS.needed_to_test) == []


def test_everything_that_those_packages_need_is_pinned_too() -> None:
    needed: set[str] = set()
    for pin in PINS.needed_to_test:
        needed |= {pin.name} | reached_from(pin.name, set())

    assert needed - {pin.name for pin in PINS.environment} == set()


def test_the_versions_asked_for_are_those_of_the_environment() -> None:
    environment = {pin.name: pin.version for pin in PINS.environment}

    assert differences(PINS.needed_to_test, environment.get) == []


def test_every_pinned_package_has_its_hashes() -> None:
    hashed = {plain(name): version for name, version in REQUIREMENT.findall(HASHES)}

    assert differences(PINS.environment, hashed.get) == []
    assert hashed.keys() - {pin.name for pin in PINS.environment} == {"setuptools"}
    assert len(re.findall(r"==", HASHES)) <= len(re.findall(r"--hash=sha256:[0-9a-f]{64}", HASHES))


@pytest.mark.parametrize("missing", ["numpy", "click"])
def test_a_package_that_is_not_installed_is_found(missing: str) -> None:
    pins = tuple(pin for pin in PINS.environment if pin.name == missing)

    assert differences(pins, dict[str, str]().get) == [f"{missing} missing instead of {pins[0].version}"]
