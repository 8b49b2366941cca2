"""The command that finds every fault of a catalogue, each by file, part and entry."""

from __future__ import annotations

import shutil
from pathlib import Path

import pytest

from tests.cli.conftest import Command
from tests.demo import SEED_DATA, demo_catalogue


@pytest.fixture
def catalogue(tmp_path: Path) -> Path:
    """A copy of the demo catalogue to spoil."""
    return Path(shutil.copytree(SEED_DATA / "catalogue", tmp_path / "catalogue"))


def test_the_demo_catalogue_has_no_fault(command: Command) -> None:
    said = command("catalogue", "lint")

    assert (said.code, said.err) == (0, "")
    assert f"No fault. Revision {demo_catalogue().revision}: {len(demo_catalogue().hubs)} hubs, " in said.out


def test_every_fault_is_named_by_file_part_and_entry(command: Command, catalogue: Path) -> None:
    spoil(catalogue / "hubs.yaml", "spoke_holes: 36", "spoke_holes: many")
    spoil(catalogue / "packs.yaml", "- {id: ", "- {wheels: round, id: ")

    said = command("catalogue", "lint", catalogue)

    rows = [[cell.strip() for cell in line.split("│")[1:-1]] for line in said.err.splitlines() if "│" in line]
    assert said.code == 1
    assert said.out == ""
    assert ["hubs.yaml", "weir", "spoke_holes"] in [row[:3] for row in rows]
    assert any(row[0] == "packs.yaml" and row[2] == "wheels" for row in rows)
    assert all(row[3] for row in rows)
    assert f"{len(rows)} faults. Nothing was imported." in said.err


@pytest.mark.parametrize(
    ("content", "why"),
    [
        (b"\xff", "is no text in UTF-8: byte 1 can't be read"),
        (b"{}", "must be a list of parts, or [] for none, not {}"),
        (b"- [", "hubs.yaml"),
        (b"- &a [*a, *a]", "hubs.yaml"),
    ],
)
def test_a_file_that_is_no_list_of_parts_is_told_as_it_stands(
    content: bytes, why: str, command: Command, catalogue: Path
) -> None:
    (catalogue / "hubs.yaml").write_bytes(content)

    said = command("catalogue", "lint", catalogue)

    assert said.code == 1
    assert why in said.err
    assert "Nothing was imported." in said.err


@pytest.mark.parametrize("name", ["nowhere", "empty", "file"])
def test_a_folder_that_holds_no_catalogue_is_told_in_one_line(
    name: str, command: Command, tmp_path: Path
) -> None:
    (tmp_path / "empty").mkdir()
    (tmp_path / "file").touch()

    said = command("catalogue", "lint", tmp_path / name)

    assert said.code == 1
    assert said.err == f"Nothing was read: {tmp_path / name} is no folder with YAML files\n"


def spoil(file: Path, right: str, wrong: str) -> None:
    text = file.read_text("utf-8")
    assert right in text
    file.write_text(text.replace(right, wrong, 1), encoding="utf-8")
