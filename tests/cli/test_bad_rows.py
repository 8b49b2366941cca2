"""Every kind of bad entry for every fact, as a row of a file: named by line and fact, the others judged."""

from __future__ import annotations

import csv
import json
from collections.abc import Iterable
from pathlib import Path
from typing import Any

from app.facts.fact import Fact
from app.facts.table import FACTS
from tests.cli.conftest import Command
from tests.facts.bad_entries import BAD, as_number, begins

# As many rows of a megabyte as stay below the size that no list of bikes has.
ROWS_OF_A_MEGABYTE = 18
SHORT_KINDS = [kind for kind in BAD if kind != "a megabyte"] + ["wrong type"]
GOOD_ROW = {"bike": "Blue tourer", "frame_material": "steel", "rim_holes": "36"}


def test_each_bad_row_is_named_and_the_good_ones_are_judged(command: Command, tmp_path: Path) -> None:
    entries = [(fact, kind) for kind in SHORT_KINDS for fact in FACTS.values()]
    bad_rows = [{fact.name: entry(fact, kind)} for fact, kind in entries]
    file = write(tmp_path / "bikes.csv", [GOOD_ROW, *bad_rows, GOOD_ROW])

    said = command("check", file, "--report", tmp_path / "report.json")

    first, *bad, last = report(tmp_path)
    assert said.code == 1
    assert f"2 judged, {len(entries)} not read." in said.out
    assert first["report"] == last["report"] is not None
    for line, ((fact, kind), told) in enumerate(zip(entries, bad, strict=True), start=3):
        assert told["where"] == f"{file}, line {line}"
        assert told["report"] is None
        (error,) = told["errors"]
        assert error.startswith(f"{fact.name}: {begins(fact, BAD.get(kind, BAD['rubbish']))}")


def test_a_megabyte_in_a_row_is_named_and_not_shown(command: Command, tmp_path: Path) -> None:
    files = [
        write(
            tmp_path / f"bikes-{number}.csv",
            [GOOD_ROW, *({fact.name: entry(fact, "a megabyte")} for fact in facts)],
        )
        for number, facts in enumerate(in_files(FACTS.values()))
    ]

    said = command("check", *files, "--report", tmp_path / "report.json")

    unread = [told for told in report(tmp_path) if told["report"] is None]
    assert said.code == 1
    assert [told["errors"] for told in unread] == [
        [f"{fact.name}: {fact.label} must be 200 characters at most. You typed 1048576."]
        for fact in FACTS.values()
    ]
    assert "9" * 201 not in said.out


def test_empty_cells_are_facts_that_were_not_asked(command: Command, tmp_path: Path) -> None:
    file = write(tmp_path / "bikes.csv", [GOOD_ROW])

    said = command("check", file)

    assert (said.code, said.err) == (0, "")
    assert "│ Blue tourer │ Not settled yet │" in said.out


def entry(fact: Fact, kind: str) -> str:
    return '{"value": "wide"}' if kind == "wrong type" else BAD[kind].text(as_number(fact))


def write(file: Path, rows: Iterable[dict[str, str]]) -> Path:
    with file.open("w", encoding="utf-8", newline="") as out:
        writer = csv.DictWriter(out, ["bike", *FACTS], restval="")
        writer.writeheader()
        writer.writerows(rows)
    return file


def in_files(facts: Iterable[Fact]) -> list[list[Fact]]:
    facts = list(facts)
    return [facts[start : start + ROWS_OF_A_MEGABYTE] for start in range(0, len(facts), ROWS_OF_A_MEGABYTE)]


def report(folder: Path) -> list[dict[str, Any]]:
    told: list[dict[str, Any]] = json.loads((folder / "report.json").read_text("utf-8"))
    return told
