"""Lint, format and types hold everywhere, so that the test command is the only one to remember."""

import subprocess
import sys
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]


def run(*arguments: str) -> subprocess.CompletedProcess[str]:
    command = [sys.executable, "-m", *arguments]
    return subprocess.run(command, cwd=ROOT, capture_output=True, text=True, check=False)


@pytest.mark.parametrize(
    "arguments",
    [
        pytest.param(("ruff", "check", "--quiet", "--output-format=concise", "."), id="lint"),
        pytest.param(("ruff", "format", "--check", "."), id="format"),
        pytest.param(("mypy", "--no-error-summary"), id="types"),
    ],
)
def test_the_whole_project_is_clean(arguments: tuple[str, ...]) -> None:
    done = run(*arguments)

    assert done.returncode == 0, done.stdout + done.stderr


@pytest.mark.parametrize(
    ("arguments", "complaint"),
    [
        pytest.param(("ruff", "check", "--config", "pyproject.toml"), "F401", id="lint"),
        pytest.param(("ruff", "format", "--check"), "would be reformatted", id="format"),
        pytest.param(("mypy", "--config-file", "pyproject.toml"), "no-untyped-def", id="types"),
    ],
)
def test_a_careless_module_is_found(tmp_path: Path, arguments: tuple[str, ...], complaint: str) -> None:
    (module := tmp_path / "careless.py").write_text("import os\n\n\ndef spokes(holes):\n    return  holes\n")

    done = run(*arguments, str(module))

    assert done.returncode == 1
    assert complaint in done.stdout
