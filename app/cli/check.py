"""The command that checks every bike of some files, with a progress bar, a table and a report file."""

from __future__ import annotations

import json
import sys
from collections.abc import Iterable
from dataclasses import dataclass
from errno import ENOENT
from pathlib import Path
from typing import Any, TextIO

from pydantic import ValidationError
from rich.console import Console
from rich.progress import Progress

from app.catalogue.fault import TextFaults
from app.cli.bike_files import BikeRow, read_all
from app.cli.said import complain
from app.cli.screen import screen, table
from app.report.build import Checker
from app.report.report import Report, report_to_json
from app.report.verdict import deciding
from app.web.parts_folder import read_checker
from app.web.settings import Settings

NOT_CHECKED = "Nothing was checked"
ALL_JUDGED, SOME_UNREADABLE, NOTHING_READABLE = 0, 1, 2


@dataclass(frozen=True, slots=True)
class Judged:
    """One bike with its report, or None where its row can't be read."""

    row: BikeRow
    report: Report | None


def check(paths: Iterable[Path], report_path: Path | None, out: TextIO) -> int:
    """Judge every bike. A bike that doesn't fit is not a failure; a row that can't be read is.

    0 all judged, 1 some rows unreadable, 2 nothing readable.
    """
    try:
        settings = Settings()
        checker = read_checker(settings.catalogue_folder, settings.standards_folder)
        if checker is None:
            raise FileNotFoundError(ENOENT, "there is no catalogue here", str(settings.catalogue_folder))
    except (ValidationError, TextFaults, OSError) as problem:
        complain(NOT_CHECKED, problem)
        return NOTHING_READABLE
    return _judge([*read_all(paths)], checker, report_path, out)


def _judge(rows: list[BikeRow], checker: Checker, report_path: Path | None, out: TextIO) -> int:
    judged = _judge_all(rows, checker)
    _show(judged, screen(out))
    is_told = report_path is None or _write(report_path, judged)
    unread = sum(each.report is None for each in judged)
    if unread == len(judged):
        complain(NOT_CHECKED, "no bike could be read")
        return NOTHING_READABLE
    return SOME_UNREADABLE if unread or not is_told else ALL_JUDGED


def _judge_all(rows: list[BikeRow], checker: Checker) -> list[Judged]:
    console = screen(sys.stderr)
    with Progress(console=console, transient=True, disable=not console.is_terminal) as progress:
        return [
            Judged(row, None if row.errors else checker.report(row.answers))
            for row in progress.track(rows, description="Checking")
        ]


def _show(judged: list[Judged], console: Console) -> None:
    console.print(table(("Bike", "Verdict", "Best kit", "Decided by"), map(_line, judged)))
    unread = sum(each.report is None for each in judged)
    console.print(f"{len(judged) - unread} judged, {unread} not read.")


def _line(each: Judged) -> tuple[str, ...]:
    if each.report is None:
        return each.row.name, "Not read", each.row.where, "\n".join(each.row.errors)
    return each.row.name, each.report.verdict, _kit(each.report), decided_by(each.report)


def _kit(report: Report) -> str:
    best = report.best
    return "" if best is None else f"{best.parts['hub'].name}, {best.parts['axle_set'].name}"


def decided_by(report: Report) -> str:
    """The rule that the verdict rests on, with its sentence; for a plain fit the sentence alone."""
    worst = deciding(report.best.findings) if report.best else None
    return f"{worst.title} ({worst.rule_id}): {worst.sentence}" if worst else report.sentence


def _write(path: Path, judged: list[Judged]) -> bool:
    lines: list[dict[str, Any]] = [
        {
            "bike": each.row.name,
            "where": each.row.where,
            "errors": list(each.row.errors),
            "report": report_to_json(each.report) if each.report else None,
        }
        for each in judged
    ]
    try:
        path.write_text(json.dumps(lines, ensure_ascii=False, indent=1) + "\n", encoding="utf-8")
    except OSError as problem:
        complain("The report was not written", problem)
        return False
    return True
