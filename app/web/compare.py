"""Kits side by side: in columns on a wide page, one below another on a phone, and only what differs."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import ClassVar, Literal

from fastapi import APIRouter, HTTPException
from starlette.responses import Response

from app.report.report import Finding
from app.report.side_by_side import Column, side_by_side
from app.rules.rule import PART_KINDS
from app.web.build_address import CodeInAddress
from app.web.counter_side import KIND_NAMES
from app.web.current import CurrentSite, CurrentStore
from app.web.page import Density
from app.web.shown_build import NO_KITS, BuildPage, as_judged_now, find_build

router = APIRouter(include_in_schema=False)

MOST_COLUMNS = 4


@dataclass(frozen=True, slots=True)
class Cell:
    """What one kit says in a row; `kit` is its name, which stands in the cell on a phone."""

    kit: str
    text: str
    state: str = ""
    words: str = ""


@dataclass(frozen=True, slots=True)
class CompareRow:
    """One line through all kits; `address` leads to its rule, or is empty."""

    label: str
    cells: tuple[Cell, ...]
    address: str = ""

    @property
    def differs(self) -> bool:
        """Whether the kits differ here: in their verdicts, or in their words where there is no verdict."""
        return len({cell.state or cell.text for cell in self.cells}) > 1


@dataclass(frozen=True)
class ComparePage(BuildPage):
    """At most four kits, the best first. `hidden` counts the rows in which they don't differ."""

    template: ClassVar[str] = "pages/compare.html"
    density: ClassVar[Density] = "counter"

    kits: tuple[str, ...]
    rows: tuple[CompareRow, ...]
    shows_all: bool
    hidden: int

    heading = "Kits side by side"


@router.get("/builds/{code}/compare")
async def compare(
    code: CodeInAddress, site: CurrentSite, store: CurrentStore, rows: Literal["all"] | None = None
) -> Response:
    """Show the best kits beside each other, as they are judged now."""
    record = find_build(store, code)
    if site.checker is None:
        raise HTTPException(404, NO_KITS)
    shown = as_judged_now(record, site.checker)
    columns = side_by_side(site.checker, shown.answers, shown.report.kits[:MOST_COLUMNS])
    every = tuple(_rows(columns))
    differing = tuple(row for row in every if row.differs)
    return site.show(
        ComparePage(
            build=shown.foot(site.settings),
            kits=tuple(column.kit.hub.name for column in columns),
            rows=every if rows else differing,
            shows_all=bool(rows),
            hidden=len(every) - len(differing),
        )
    )


def _rows(columns: Sequence[Column]) -> Iterator[CompareRow]:
    yield CompareRow("Verdict", tuple(_verdict(column) for column in columns))
    for kind in PART_KINDS[1:]:
        cells = tuple(Cell(column.kit.hub.name, column.parts[kind]) for column in columns)
        yield CompareRow(KIND_NAMES[kind], cells)
    for findings in zip(*(column.findings for column in columns), strict=True):
        cells = tuple(_said(column, finding) for column, finding in zip(columns, findings, strict=True))
        yield CompareRow(findings[0].title, cells, f"/rules/{findings[0].rule_id}")


def _verdict(column: Column) -> Cell:
    kit = column.kit
    return Cell(kit.hub.name, kit.sentence, kit.state, kit.verdict)


def _said(column: Column, finding: Finding) -> Cell:
    return Cell(column.kit.hub.name, finding.sentence, finding.state, finding.words)
