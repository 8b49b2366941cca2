"""Knows which versions pyproject.toml wants, and where the running Python has others."""

import re
import tomllib
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from importlib import metadata

PIN = re.compile(r"(?P<name>[\w.-]+)==(?P<version>[\w.+!]+)\s*(?P<marker>;.*)?")


@dataclass(frozen=True)
class Pin:
    """A package and its one right version; one for some machines may be missing on the others."""

    name: str
    version: str
    for_some_machines: bool


@dataclass(frozen=True)
class Pins:
    """All pins: what the application needs, what its tests need beside it, and the whole environment."""

    needed_to_run: tuple[Pin, ...]
    needed_to_test: tuple[Pin, ...]
    environment: tuple[Pin, ...]


def read_pins(pyproject: str) -> Pins:
    """Read the text of pyproject.toml. A dependency without an exact version is a ValueError."""
    table = tomllib.loads(pyproject)
    run = read_list(table["project"]["dependencies"])
    return Pins(
        needed_to_run=run,
        needed_to_test=run + read_list(table["project"]["optional-dependencies"]["dev"]),
        environment=read_list(table["tool"]["uv"]["constraint-dependencies"]),
    )


def read_list(requirements: list[str]) -> tuple[Pin, ...]:
    """Read requirements such as `numpy==2.4.6` or `uvloop==0.23.0; sys_platform != 'win32'`."""
    return tuple(read_pin(requirement) for requirement in requirements)


def read_pin(requirement: str) -> Pin:
    """Read one requirement. Anything but one exact version is a ValueError."""
    found = PIN.fullmatch(requirement.strip())
    if found is None:
        raise ValueError(f"{requirement!r} does not name one exact version, as in 'numpy==2.4.6'")
    return Pin(plain(found["name"]), found["version"], for_some_machines=found["marker"] is not None)


def plain(name: str) -> str:
    """Spell a package's name the one way in which `Jinja2`, `jinja2` and `JINJA2` are the same."""
    return re.sub(r"[-_.]+", "-", name).lower()


def installed_version(name: str) -> str | None:
    """Version of a package in the running Python, or nothing where it is not installed."""
    try:
        return metadata.version(name)
    except metadata.PackageNotFoundError:
        return None


def differences(
    pins: tuple[Pin, ...], installed: Callable[[str], str | None] = installed_version
) -> list[str]:
    """Say for each pin that does not hold what is there instead: 'numpy 2.4.5 instead of 2.4.6'."""
    versions: Mapping[Pin, str | None] = {pin: installed(pin.name) for pin in pins}
    return [
        f"{pin.name} {version or 'missing'} instead of {pin.version}"
        for pin, version in versions.items()
        if version != pin.version and not (version is None and pin.for_some_machines)
    ]
