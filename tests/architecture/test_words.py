"""Nothing in the project names the machine it was written on, or leaves work for later."""

import re
from collections.abc import Iterator
from fnmatch import fnmatch
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]
NO_ENDING = ""  # as of .ci/run and .gitignore
KINDS = frozenset({NO_ENDING, *".css .csv .html .js .json .mako .md .py .svg .toml .txt .yaml .yml".split()})
WRITTEN_BY_OTHERS = frozenset({"vendor", "fonts", "LICENSE"})
IGNORED = (ROOT / ".gitignore").read_text(encoding="utf-8").splitlines()
# Each pattern has a letter in brackets, so that this list does not find itself.
UNWANTED = {
    "a path of one machine": r"(?<![\w.])/(?:[h]ome|[U]sers)/\w",
    "work left for later": (
        r"\b(?:TO[D]O|FI[X]ME|HAC[K]|TB[D]|WI[P])\b|NotImplemented[E]rror|(?i:lorem [i]psum)"
    ),
    "a test that cannot fail": (
        r"\bassert [T]rue\b|\bmark\.(?:[s]kip|[x]fail)\b|\bpytest\.(?:[s]kip|[x]fail)\("
    ),
}


def unwanted(text: str) -> list[str]:
    """Say line by line what does not belong into the project."""
    return [
        f"line {number}: {what}"
        for number, line in enumerate(text.splitlines(), start=1)
        for what, pattern in UNWANTED.items()
        if re.search(pattern, line)
    ]


def our_texts(folder: Path = ROOT) -> Iterator[Path]:
    """Every text that goes into the project."""
    for path in sorted(folder.iterdir()):
        if path.name in WRITTEN_BY_OTHERS or is_left_out_of_git(path.name):
            continue
        if path.is_dir():
            yield from our_texts(path)
        elif path.suffix in KINDS:
            yield path


def is_left_out_of_git(name: str) -> bool:
    return name == ".git" or any(fnmatch(name, pattern.rstrip("/")) for pattern in IGNORED)


def test_no_text_of_the_project_holds_an_unwanted_word() -> None:
    found = [
        f"{path.relative_to(ROOT)} {what}"
        for path in our_texts()
        for what in unwanted(path.read_text(encoding="utf-8"))
    ]

    assert found == []


def test_the_texts_of_the_project_are_looked_at() -> None:
    seen = {str(path.relative_to(ROOT)) for path in our_texts()}

    assert {"README.md", "pyproject.toml", ".ci/run", "app/__main__.py", "tests/conftest.py"} <= seen
    assert not any("vendor" in path or ".venv" in path for path in seen)


@pytest.mark.parametrize(
    ("line", "what"),
    [
        ("see /hom" + "e/kim/notes", "a path of one machine"),
        ("# TO" + "DO: the left stay", "work left for later"),
        ("raise NotImplemented" + "Error", "work left for later"),
        ("    assert " + "True", "a test that cannot fail"),
        ("@pytest.mark." + "skip(reason='later')", "a test that cannot fail"),
    ],
)
def test_an_unwanted_word_is_found(line: str, what: str) -> None:
    assert unwanted(f"first line\n{line}") == [f"line 2: {what}"]


@pytest.mark.parametrize(
    "line",
    [
        "/usr/bin/chromium",
        "framework/rootbeer",
        "The AIR gap",
        "https://example.org/home/",
        "a skipped tooth",
    ],
)
def test_an_ordinary_word_is_left_alone(line: str) -> None:
    assert unwanted(line) == []
