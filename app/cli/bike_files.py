"""Reads bikes from CSV and JSON files; what can't be read is named and doesn't stop the others."""

from __future__ import annotations

import json
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from app.facts.answers import Answers
from app.facts.csv_reader import read_rows
from app.facts.json_reader import read_json
from app.facts.reading import FactError

ENDINGS = (".csv", ".json")
LARGEST_FILE = 20_000_000


@dataclass(frozen=True, slots=True)
class BikeRow:
    """One bike of a file, or what is wrong with it.

    where  the file, with the line or the place in the list
    """

    where: str
    name: str
    answers: Answers
    errors: tuple[str, ...] = ()


def find_files(paths: Iterable[Path]) -> Iterator[Path]:
    """The files named, and all CSV and JSON files of the folders named, in order of their names."""
    for path in paths:
        if path.is_dir():
            yield from sorted(each for each in path.iterdir() if each.suffix.lower() in ENDINGS)
        else:
            yield path


def read_bikes(path: Path) -> list[BikeRow]:
    """All bikes of a file. A file that can't be read at all is one row that says why."""
    try:
        if path.suffix.lower() not in ENDINGS:
            return [_unread(path, f"{path.suffix or 'a file without an ending'} is neither .csv nor .json")]
        if path.stat().st_size > LARGEST_FILE:
            return [_unread(path, f"the most is {LARGEST_FILE:,} bytes")]
        text = path.read_text(encoding="utf-8-sig")
    except OSError as problem:
        return [_unread(path, problem.strerror or str(problem))]
    except UnicodeDecodeError as problem:
        return [_unread(path, f"byte {problem.start + 1} is not UTF-8 text")]
    return _from_csv(path, text) if path.suffix.lower() == ".csv" else _from_json(path, text)


def _unread(path: Path, why: str) -> BikeRow:
    return BikeRow(str(path), path.stem, Answers(), (why,))


def _sentence(error: FactError) -> str:
    return f"{error.fact}: {error.message}" if error.fact else error.message


def _from_csv(path: Path, text: str) -> list[BikeRow]:
    read = read_rows(text)
    header = BikeRow(f"{path}, line 1", path.stem, Answers(), tuple(map(_sentence, read.errors)))
    rows = [
        BikeRow(
            f"{path}, line {row.line}",
            row.bike or f"{path.stem} {row.line}",
            row.reading.answers,
            tuple(map(_sentence, row.reading.errors)),
        )
        for row in read.rows
    ]
    return [header, *rows] if read.errors else rows


def _from_json(path: Path, text: str) -> list[BikeRow]:
    try:
        data = json.loads(text)
    except (ValueError, RecursionError) as problem:
        return [_unread(path, f"not JSON: {problem}")]
    many = data if isinstance(data, list) else [data]
    return [_bike(path, at if isinstance(data, list) else 0, each) for at, each in enumerate(many, start=1)]


def _bike(path: Path, at: int, data: Any) -> BikeRow:  # noqa: ANN401 - whatever the file holds
    named = isinstance(data, dict) and isinstance(data.get("name"), str)
    facts = {key: value for key, value in data.items() if key != "name"} if isinstance(data, dict) else data
    reading = read_json(facts)
    where = f"{path}, bike {at}" if at else str(path)
    name = data["name"] if named else (f"{path.stem} {at}" if at else path.stem)
    return BikeRow(where, name, reading.answers, tuple(map(_sentence, reading.errors)))
