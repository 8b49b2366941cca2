"""The command that checks every bike of some files, with a progress bar, a table and a report file."""

from __future__ import annotations

import json
import sys
from collections.abc import Iterable
from dataclasses import dataclass
from pathlib import Path
from typing import Any, TextIO

from rich.console import Console
from rich.progress import Progress
from rich.table import Table

from app.catalogue.fault import CatalogueFaults, StandardsFaults
from app.cli.bike_files import BikeRow, find_files, read_bikes
from app.cli.seed import read_checker
from app.report.build import Checker
from app.report.report import Report, report_to_json
from app.report.verdict import deciding
from app.web.settings import Settings

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
    settings = Settings()
    try:
        checker = read_checker(settings.catalogue_folder, settings.standards_folder)
    except (CatalogueFaults, StandardsFaults, OSError) as problem:
        print(f"Nothing was checked: {problem}", file=sys.stderr)  # noqa: T201
        return NOTHING_READABLE
    judged = _judge_all([row for path in find_files(paths) for row in read_bikes(path)], checker)
    _show(judged, Console(file=out))
    if report_path is not None and not _write(report_path, judged):
        return SOME_UNREADABLE
    unread = sum(each.report is None for each in judged)
    if unread == len(judged):
        print("No bike could be read.", file=sys.stderr)  # noqa: T201
        return NOTHING_READABLE
    return SOME_UNREADABLE if unread else ALL_JUDGED


def _judge_all(rows: list[BikeRow], checker: Checker) -> list[Judged]:
    with Progress(console=Console(stderr=True), transient=True) as progress:
        return [
            Judged(row, None if row.errors else checker.report(row.answers))
            for row in progress.track(rows, description="Checking")
        ]


def _show(judged: list[Judged], console: Console) -> None:
    table = Table("Bike", "Verdict", "Best kit", "Decided by")
    for each in judged:
        if each.report is not None:
            table.add_row(each.row.name, each.report.verdict, _kit(each.report), decided_by(each.report))
        else:
            table.add_row(each.row.name, "Not read", each.row.where, "\n".join(each.row.errors))
    console.print(table)
    unread = sum(each.report is None for each in judged)
    console.print(f"{len(judged) - unread} judged, {unread} not read.", highlight=False)


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
        print(f"The report was not written: {problem}", file=sys.stderr)  # noqa: T201
        return False
    return True
