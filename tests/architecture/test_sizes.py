"""Everything stays small enough to read in one go, is named for what it holds, and says what it is for."""

import ast
import re
from collections.abc import Iterator
from fnmatch import fnmatch
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]
LINES_OF_A_PYTHON_FILE = 250
LINES_OF_A_FUNCTION = 40
LINES_OF_A_RULE = 45  # with its decorator, which holds its words
LINES_OF_A_TEMPLATE = 100
LINES_OF_A_STYLE_SHEET = 150
NAMES_THAT_SAY_NOTHING = frozenset("utils util helpers helper common manager base misc".split())
AT_THE_TOP = frozenset(
    "README.md DEVELOPERS.md LICENSE pyproject.toml app templates static migrations tests seed_data".split()
)
SENTENCE = re.compile(r"\S+(\s+\S+){3,}[.?]", re.DOTALL)


def files(pattern: str, *folders: str) -> list[Path]:
    """Our own files: what others wrote stands in folders called vendor."""
    found = [path for folder in folders for path in (ROOT / folder).rglob(pattern) if path.is_file()]
    return sorted(path for path in found if "vendor" not in path.parts and "__pycache__" not in path.parts)


def python_files() -> list[Path]:
    return files("*.py", "app", "tests", "migrations", ".ci")


def faults_of_module(source: str, name: str) -> list[str]:
    """Say what is too long in a module, and whether it begins with a sentence."""
    tree = ast.parse(source)
    faults = list(faults_of_functions(tree))
    if (lines := len(source.splitlines())) > LINES_OF_A_PYTHON_FILE:
        faults.append(f"{lines} lines")
    if not SENTENCE.match((ast.get_docstring(tree) or "").partition("\n\n")[0]):
        faults.append("begins with no sentence")
    return [f"{name}: {fault}" for fault in faults]


def faults_of_functions(tree: ast.AST) -> Iterator[str]:
    for node in ast.walk(tree):
        if isinstance(node, ast.FunctionDef | ast.AsyncFunctionDef):
            lines, limit = size(node)
            if lines > limit:
                yield f"{node.name} has {lines} lines"


def size(function: ast.FunctionDef | ast.AsyncFunctionDef) -> tuple[int, int]:
    """Lines of a function and the most it may have; a rule is counted with its decorator."""
    last = function.end_lineno or function.lineno
    for decorator in function.decorator_list:
        if isinstance(decorator, ast.Call) and ast.unparse(decorator.func) == "rule":
            return last - decorator.lineno + 1, LINES_OF_A_RULE
    return last - function.lineno + 1, LINES_OF_A_FUNCTION


def too_long(paths: list[Path], limit: int) -> list[str]:
    counted = [(path, len(path.read_text(encoding="utf-8").splitlines())) for path in paths]
    return [f"{path.name}: {lines} lines" for path, lines in counted if lines > limit]


def says_nothing(path: Path) -> bool:
    return any(part.partition(".")[0].strip("_") in NAMES_THAT_SAY_NOTHING for part in path.parts)


def misplaced(names: list[str], ignored: list[str]) -> list[str]:
    """Names at the top that are neither on the list, nor dotfiles, nor made by a tool and left out of git."""
    return [
        name
        for name in names
        if name not in AT_THE_TOP
        and not name.startswith(".")
        and not any(fnmatch(name, pattern.rstrip("/")) for pattern in ignored)
    ]


def test_modules_and_functions_are_short_and_modules_say_what_they_are_for() -> None:
    faults = [
        fault
        for path in python_files()
        for fault in faults_of_module(path.read_text(encoding="utf-8"), str(path.relative_to(ROOT)))
    ]

    assert faults == []


def test_templates_are_short() -> None:
    assert too_long(files("*.*", "templates"), LINES_OF_A_TEMPLATE) == []


def test_style_sheets_are_short() -> None:
    assert too_long(files("*.css", "static", "templates"), LINES_OF_A_STYLE_SHEET) == []


def test_every_file_and_folder_is_named_for_what_it_holds() -> None:
    ours = files("*", "app", "templates", "static", "migrations", "tests", "seed_data")

    assert [str(path) for path in ours if says_nothing(path.relative_to(ROOT))] == []


def test_nothing_else_stands_at_the_top() -> None:
    ignored = (ROOT / ".gitignore").read_text(encoding="utf-8").splitlines()

    assert misplaced([path.name for path in ROOT.iterdir()], ignored) == []


@pytest.mark.parametrize(
    ("source", "fault"),
    [
        pytest.param("x = 1\n", "begins with no sentence", id="no docstring"),
        pytest.param('"""Wheels."""\n', "begins with no sentence", id="a word is no sentence"),
        pytest.param('"""What this module is for"""\n', "begins with no sentence", id="no full stop"),
        pytest.param('"""One two three four."""\n' + "x = 1\n" * 250, "251 lines", id="a long module"),
        pytest.param(
            '"""One two three four."""\ndef f():\n' + "    x = 1\n" * 40,
            "f has 41 lines",
            id="a long function",
        ),
        pytest.param(
            '"""One two three four."""\n@rule(\n)\ndef f():\n' + "    x = 1\n" * 43,
            "f has 46 lines",
            id="a long rule",
        ),
    ],
)
def test_a_module_over_a_limit_is_found(source: str, fault: str) -> None:
    assert faults_of_module(source, "wheel.py") == [f"wheel.py: {fault}"]


@pytest.mark.parametrize(
    "source",
    [
        pytest.param('"""One two three four."""\n' + "x = 1\n" * 249, id="a module of 250 lines"),
        pytest.param('"""One two three four."""\ndef f():\n' + "    x = 1\n" * 39, id="a function of 40"),
        pytest.param(
            '"""One two three four."""\n@rule(\n)\ndef f():\n' + "    x = 1\n" * 42, id="a rule of 45"
        ),
    ],
)
def test_a_module_exactly_at_a_limit_passes(source: str) -> None:
    assert faults_of_module(source, "wheel.py") == []


def test_a_long_template_is_found(tmp_path: Path) -> None:
    (template := tmp_path / "sheet.html").write_text("<p>\n" * 101, encoding="utf-8")

    assert too_long([template], LINES_OF_A_TEMPLATE) == ["sheet.html: 101 lines"]


@pytest.mark.parametrize(
    "path", ["app/utils.py", "app/common/span.py", "templates/base.html", "app/_helpers.py"]
)
def test_a_name_that_says_nothing_is_found(path: str) -> None:
    assert says_nothing(Path(path))


def test_a_stray_file_at_the_top_is_found() -> None:
    names = ["README.md", "notes.txt", ".gitignore", "axlewright.egg-info", "var"]

    assert misplaced(names, ignored=["var/", "*.egg-info/"]) == ["notes.txt"]
