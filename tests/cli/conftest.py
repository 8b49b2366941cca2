"""A command as it is typed, in a shop of its own, and what it said on the way."""

from __future__ import annotations

import os
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path
from typing import TypeAlias

import pytest

from app.cli import main

WIDE = "400"


@dataclass(frozen=True)
class Said:
    """How a command ended, what it showed and what it complained of."""

    code: int
    out: str
    err: str


Command: TypeAlias = Callable[..., Said]


@pytest.fixture
def command(tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]) -> Command:
    """Runs a command with the demo catalogue, away from any settings of this machine, on a wide screen."""
    for name in [name for name in os.environ if name.startswith("AXLEWRIGHT_")]:
        monkeypatch.delenv(name)
    monkeypatch.setenv("AXLEWRIGHT_DATA_FOLDER", str(tmp_path / "shop"))
    monkeypatch.setenv("COLUMNS", WIDE)

    def run(*words: object) -> Said:
        code = main([str(word) for word in words])
        return Said(code, *capsys.readouterr())

    return run
