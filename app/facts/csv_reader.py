"""Reads bikes from CSV: the first line names the facts, each further line is a bike."""

from __future__ import annotations

import csv
from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass, replace
from io import StringIO

from app.facts.closest import unknown_names
from app.facts.form_reader import TOOL_SUFFIX, read_form
from app.facts.messages import CSV_CELLS, CSV_EMPTY, CSV_TWICE
from app.facts.plain_text import cut
from app.facts.reading import FactError, Reading
from app.facts.table import FACTS

BIKE = "bike"
DELIMITERS = ",;\t"
BYTE_ORDER_MARK = "\ufeff"

# The whole text is in memory already, so a limit for one cell protects nothing and would end the reading.
csv.field_size_limit(2**31 - 1)


@dataclass(frozen=True)
class Row:
    """One bike: the line on which it begins, its name if the file has names, and what was read."""

    line: int
    bike: str
    reading: Reading


@dataclass(frozen=True)
class Rows:
    """All bikes of a file, and what is wrong with its first line."""

    rows: tuple[Row, ...]
    errors: tuple[FactError, ...]


def read_rows(text: str) -> Rows:
    """Every line of a CSV text as a bike; what is wrong with a line stands with that line. Never raises.

    Columns may be parted by comma, semicolon or tab. A column <fact>__tool names the tool of that fact.
    """
    text = text.removeprefix(BYTE_ORDER_MARK)
    lines = _lines(text)
    _, header = next(lines, (1, []))
    names = [cell.strip().lower() for cell in header]
    if not any(names):
        return Rows((), (FactError("", "", CSV_EMPTY),))
    return Rows(tuple(_row(line, names, cells) for line, cells in lines), _errors_of_header(names))


def _lines(text: str) -> Iterator[tuple[int, list[str]]]:
    """Each line that is not blank, with the number of the line on which it begins."""
    reader = csv.reader(StringIO(text, newline=""), delimiter=_delimiter(text))
    begins = 1
    for cells in reader:
        if any(cell.strip() for cell in cells):
            yield begins, cells
        begins = reader.line_num + 1


def _delimiter(text: str) -> str:
    first = next((line for line in StringIO(text) if line.strip()), "")
    return max(DELIMITERS, key=first.count)


def _row(line: int, names: list[str], cells: list[str]) -> Row:
    fields = dict(zip(names, cells, strict=False))
    reading = read_form(fields)
    if any(cell.strip() for cell in cells[len(names) :]):
        message = CSV_CELLS.format(cells=len(cells), columns=len(names))
        extra = FactError("", cut(cells[len(names)]), message)
        reading = replace(reading, errors=(extra, *reading.errors))
    return Row(line, cut(fields.get(BIKE, "").strip()), reading)


def _errors_of_header(names: list[str]) -> tuple[FactError, ...]:
    allowed = [BIKE, *FACTS, *(fact + TOOL_SUFFIX for fact in FACTS)]
    unknown = unknown_names(filter(None, names), allowed)
    twice = [name for name, times in Counter(names).items() if name and times > 1]
    return (*unknown, *(FactError("", cut(name), CSV_TWICE.format(name=cut(name))) for name in twice))
