"""The command that checks files of bikes: every row is judged or named, and the exit code tells which."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from app.facts.json_reader import read_json
from app.report.build import Checker
from app.report.report import report_from_json
from tests.cli.conftest import Command
from tests.demo import SEED_DATA, demo_catalogue, demo_standards

HEADER = "bike,frame_material,dropout_width_mm,rim_holes\n"
GOOD_ROW = "Blue tourer,steel,135.2,36\n"
BAD_ROW = "Red racer,cheese,1346,36\n"


def test_each_demo_bike_is_judged_with_the_rule_that_decided(command: Command) -> None:
    bikes = sorted((SEED_DATA / "bikes").glob("*.json"))

    said = command("check", SEED_DATA / "bikes")

    names = [json.loads(bike.read_text("utf-8"))["name"] for bike in bikes]
    assert said.code == 0
    assert len(names) >= 12
    assert all(f"│ {name} " in said.out for name in names)
    assert f"{len(bikes)} judged, 0 not read." in said.out
    assert "Dropout width suits the axle set (dropout_width): " in said.out


def test_a_bike_that_doesnt_fit_is_no_failure_of_the_command(command: Command, tmp_path: Path) -> None:
    write(tmp_path / "coaster.json", json.dumps({"bike": {"rear_brake": "coaster"}}))

    said = command("check", tmp_path / "coaster.json")

    assert said.code == 0
    assert "│ coaster │ Doesn't fit │" in said.out


def test_a_bad_row_is_named_by_line_and_fact_and_stops_no_other(command: Command, tmp_path: Path) -> None:
    file = write(tmp_path / "bikes.csv", HEADER + GOOD_ROW + "\n" + BAD_ROW + GOOD_ROW)

    said = command("check", file)

    assert said.code == 1
    assert said.out.count("│ Blue tourer │ Not settled yet │") == 2
    assert f"│ Red racer   │ Not read        │ {file}, line 4" in said.out
    assert "frame_material: Frame material must be one of these: steel, " in said.out
    assert "dropout_width_mm: Dropout width must be between 80 and 220" in said.out
    assert "2 judged, 1 not read." in said.out


def test_a_bad_bike_of_a_list_is_named_by_its_place(command: Command, tmp_path: Path) -> None:
    bikes = [{"bike": {"rim_holes": 36}}, {"name": "Second", "bike": {"rim_holes": "many"}}, 5]
    file = write(tmp_path / "bikes.json", json.dumps(bikes))

    said = command("check", file)

    assert said.code == 1
    assert "│ bikes 1 │ Not settled yet │" in said.out
    assert f"│ Second  │ Not read        │ {file}, bike 2" in said.out
    assert "rim_holes: Spoke holes in the rim must be a whole number, like 32" in said.out
    assert f"{file}, bike 3" in said.out


def test_a_column_that_is_no_fact_is_named_and_the_bikes_are_judged(command: Command, tmp_path: Path) -> None:
    file = write(tmp_path / "bikes.csv", HEADER.replace("rim_holes", "rim_hoels") + GOOD_ROW)

    said = command("check", file)

    assert said.code == 1
    assert f"{file}, line 1" in said.out
    assert "There is no fact called rim_hoels. Did you mean rim_holes?" in said.out
    assert "│ Blue tourer │ Not settled yet │" in said.out


@pytest.mark.parametrize(
    ("name", "content", "why"),
    [
        ("broken.json", b'{"bike": ', "This isn't JSON: line 1, column 10: expecting value."),
        ("twice.json", b'{"bike": {}, "bike": {}}', "The name bike stands twice in one object. Keep one."),
        ("half.json", b'{"name": "\\ud800"}', "This JSON holds half a character"),
        ("none.json", b"[]", "there is no bike in it"),
        ("latin.csv", b"bike,rim_holes\n\xe9,36\n", "byte 16 is not UTF-8 text"),
        ("header.csv", b"rim_holes\n", "there is no bike in it"),
        ("empty.csv", b"", "The first line must name the facts, like dropout_width_mm. This file has none."),
        ("notes.txt", b"rim_holes\n36\n", ".txt is neither .csv nor .json"),
        ("notes", b"rim_holes\n36\n", "a file without an ending is neither .csv nor .json"),
    ],
)
def test_a_file_that_cant_be_read_says_why_and_stops_no_other(
    name: str, content: bytes, why: str, command: Command, tmp_path: Path
) -> None:
    good, bad = write(tmp_path / "good.csv", HEADER + GOOD_ROW), tmp_path / name
    bad.write_bytes(content)

    alone, together = command("check", bad), command("check", bad, good)

    assert alone.code == 2
    assert alone.err == "Nothing was checked: no bike could be read\n"
    assert why in alone.out
    assert together.code == 1
    assert why in together.out
    assert "1 judged, 1 not read." in together.out


def test_a_file_that_isnt_there_says_so(command: Command, tmp_path: Path) -> None:
    said = command("check", tmp_path / "bikes.csv")

    assert said.code == 2
    assert "No such file or directory" in said.out


def test_a_file_too_big_to_be_a_list_of_bikes_is_not_read(command: Command, tmp_path: Path) -> None:
    with (tmp_path / "huge.csv").open("wb") as huge:
        huge.truncate(20_000_001)

    said = command("check", tmp_path / "huge.csv")

    assert said.code == 2
    assert "the most is 20,000,000 bytes" in said.out


def test_a_folder_without_bikes_says_so(command: Command, tmp_path: Path) -> None:
    write(tmp_path / "notes.txt", "nothing to check")

    said = command("check", tmp_path)

    assert said.code == 2
    assert "there is no CSV or JSON file in it" in said.out


def test_what_a_file_says_is_shown_as_it_stands(command: Command, tmp_path: Path) -> None:
    bikes = [{"name": "[/red] [bold]b :bike: \u001b[2J", "bike": {"rim_holes": [1, []]}}]
    file = write(tmp_path / "odd.json", json.dumps(bikes))

    said = command("check", file)

    assert "│ [/red] [bold]b :bike: \ufffd[2J │" in said.out
    assert "You sent [1, […]]." in said.out


def test_the_report_file_holds_every_report_and_every_fault(command: Command, tmp_path: Path) -> None:
    file = write(tmp_path / "bikes.csv", HEADER + GOOD_ROW + BAD_ROW)

    said = command("check", file, "--report", tmp_path / "report.json")

    good, bad = json.loads((tmp_path / "report.json").read_text("utf-8"))
    facts = {"frame_material": "steel", "dropout_width_mm": 135.2, "rim_holes": 36}
    expected = Checker.of(demo_catalogue(), demo_standards()).report(read_json({"bike": facts}).answers)
    assert said.code == 1
    assert (good["bike"], good["where"], good["errors"]) == ("Blue tourer", f"{file}, line 2", [])
    assert report_from_json(good["report"]) == expected
    assert bad["report"] is None
    assert [error.partition(":")[0] for error in bad["errors"]] == ["frame_material", "dropout_width_mm"]


def test_a_report_that_cant_be_written_is_told_in_one_line(command: Command, tmp_path: Path) -> None:
    file, report = write(tmp_path / "bikes.csv", HEADER + GOOD_ROW), tmp_path / "nowhere" / "report.json"

    said = command("check", file, "--report", report)

    assert said.code == 1
    assert said.err == f"The report was not written: {report}: No such file or directory\n"


def test_progress_is_shown_to_a_person_and_not_to_a_file(
    command: Command, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    file = write(tmp_path / "bikes.csv", HEADER + GOOD_ROW * 2)

    unseen = command("check", file)
    monkeypatch.setenv("FORCE_COLOR", "1")
    seen = command("check", file)

    assert unseen.err == ""
    assert "Checking" in seen.err
    assert "100%" in seen.err


def test_without_a_catalogue_nothing_is_checked(
    command: Command, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("AXLEWRIGHT_CATALOGUE_FOLDER", str(tmp_path))

    said = command("check", SEED_DATA / "bikes")

    assert said.code == 2
    assert (said.out, said.err) == ("", f"Nothing was checked: {tmp_path}: there is no catalogue here\n")


@pytest.mark.parametrize(
    ("setting", "value", "why"),
    [
        ("PORT", "many", "port: Input should be a valid integer, unable to parse string as an integer"),
        (
            "TIME_ZONE",
            "Lock",
            "time_zone: Value error, 'Lock' is not a time zone; write one such as Europe/Dublin.",
        ),
    ],
)
def test_a_setting_that_cant_be_is_told_in_one_line(
    setting: str, value: str, why: str, command: Command, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv(f"AXLEWRIGHT_{setting}", value)

    said = command("check", SEED_DATA / "bikes")

    assert (said.code, said.err) == (2, f"Nothing was checked: {why}\n")


def write(file: Path, text: str) -> Path:
    file.write_text(text, encoding="utf-8")
    return file
