"""Data flows one way: from facts up to the report, then to drawings, store, pages and commands."""

import shutil
import subprocess
import sys
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]
LINT_IMPORTS = [
    sys.executable,
    "-c",
    "from importlinter.cli import lint_imports_command; lint_imports_command()",
    "--no-cache",
    "--no-logo",
]


def lint_imports(folder: Path) -> subprocess.CompletedProcess[str]:
    return subprocess.run(LINT_IMPORTS, cwd=folder, capture_output=True, text=True, check=False)


@pytest.fixture
def small_app(tmp_path: Path) -> Path:
    """An application with our contract, in which each layer imports the one below it."""
    shutil.copy(ROOT / "pyproject.toml", tmp_path)
    modules = {"__init__": "", "facts": "", "rules": "import app.facts", "store": "import app.rules"}
    (tmp_path / "app").mkdir()
    for name, source in {**modules, "web": "import app.store", "drawings": "import app.rules"}.items():
        (tmp_path / "app" / f"{name}.py").write_text(source, encoding="utf-8")
    return tmp_path


def test_no_layer_of_the_application_imports_a_higher_one() -> None:
    done = lint_imports(ROOT)

    assert done.returncode == 0, done.stdout + done.stderr


def test_imports_that_go_downwards_keep_the_contract(small_app: Path) -> None:
    done = lint_imports(small_app)

    assert done.returncode == 0, done.stdout + done.stderr


@pytest.mark.parametrize(
    ("module", "source"),
    [
        pytest.param("rules", "import app.store", id="a rule that reads the store"),
        pytest.param("facts", "import app.rules", id="a fact that knows the rules"),
        pytest.param("store", "import app.drawings", id="a store that draws"),
        pytest.param("drawings", "import app.store", id="a drawing that reads the store"),
        pytest.param("tools", "", id="a module that nobody has placed"),
    ],
)
def test_an_import_that_goes_upwards_breaks_the_contract(small_app: Path, module: str, source: str) -> None:
    (small_app / "app" / f"{module}.py").write_text(source, encoding="utf-8")

    done = lint_imports(small_app)

    assert done.returncode != 0
    assert f"app.{module}" in done.stdout
