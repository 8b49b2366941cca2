"""Reads bikes from CSV and JSON files; what can't be read is named and doesn't stop the others."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from pathlib import Path

from app.facts.answers import Answers
from app.facts.csv_reader import read_rows
from app.facts.json_reader import read_json
from app.facts.json_text import NotJsonError, parse_json
from app.facts.plain_text import cut
from app.facts.reading import FactError

ENDINGS = (".csv", ".json")
LARGEST_FILE = 20_000_000
NO_BIKE = "there is no bike in it"
NO_FILE = "there is no CSV or JSON file in it"


@dataclass(frozen=True, slots=True)
class BikeRow:
    """One bike of a file, or what is wrong with it.

    where  the file, with the line or the place in the list
    """

    where: str
    name: str
    answers: Answers
    errors: tuple[str, ...] = ()


def read_all(paths: Iterable[Path]) -> Iterator[BikeRow]:
    """All bikes of the files named, and of all CSV and JSON files of the folders named, by their names."""
    for path in paths:
        yield from _bikes_in(path) if path.is_dir() else read_bikes(path)


def _bikes_in(folder: Path) -> list[BikeRow]:
    try:
        files = sorted(each for each in folder.iterdir() if each.suffix.lower() in ENDINGS)
    except OSError as problem:
        return [_unread(folder, problem.strerror or str(problem))]
    return [bike for file in files for bike in read_bikes(file)] or [_unread(folder, NO_FILE)]


def read_bikes(path: Path) -> list[BikeRow]:
    """All bikes of a file. A file that can't be read at all is one row that says why."""
    is_csv = path.suffix.lower() == ".csv"
    try:
        if path.suffix.lower() not in ENDINGS:
            return [_unread(path, f"{path.suffix or 'a file without an ending'} is neither .csv nor .json")]
        if path.stat().st_size > LARGEST_FILE:
            return [_unread(path, f"the most is {LARGEST_FILE:,} bytes")]
        body = path.read_bytes()
        bikes = _from_csv(path, body.decode("utf-8-sig")) if is_csv else _from_json(path, parse_json(body))
    except OSError as problem:
        return [_unread(path, problem.strerror or str(problem))]
    except UnicodeDecodeError as problem:
        return [_unread(path, f"byte {problem.start + 1} is not UTF-8 text")]
    except NotJsonError as problem:
        return [_unread(path, str(problem))]
    return bikes or [_unread(path, NO_BIKE)]


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


def _from_json(path: Path, data: object) -> list[BikeRow]:
    if not isinstance(data, list):
        return [_bike(str(path), path.stem, data)]
    return [_bike(f"{path}, bike {at}", f"{path.stem} {at}", each) for at, each in enumerate(data, start=1)]


def _bike(where: str, otherwise: str, data: object) -> BikeRow:
    name = data.get("name") if isinstance(data, dict) else None
    facts = {key: value for key, value in data.items() if key != "name"} if isinstance(data, dict) else data
    reading = read_json(facts)
    named = cut(name) if isinstance(name, str) and name.strip() else otherwise
    return BikeRow(where, named, reading.answers, tuple(map(_sentence, reading.errors)))
