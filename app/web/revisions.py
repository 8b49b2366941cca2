"""The revisions of a build: a list, and each one beside the one before it."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Annotated, ClassVar, TypeAlias

from fastapi import APIRouter, Path
from starlette.responses import Response

from app.report.report import Report
from app.report.verdict import VERDICTS
from app.store.records import RevisionSummary
from app.web.build_address import CodeInAddress
from app.web.change_rows import ChangeTable, change_table
from app.web.current import CurrentSite, CurrentStore
from app.web.shop_time import day_and_clock
from app.web.shown_build import BuildPage, as_it_stands, as_saved, find_build, find_revision
from app.web.site import Site

router = APIRouter(include_in_schema=False)

MOST_REVISIONS = 1_000_000
RevisionNumber: TypeAlias = Annotated[int, Path(ge=1, le=MOST_REVISIONS)]
CATALOGUE = "{number} ({revision})"
NOT_SAID = "not said"


@dataclass(frozen=True, slots=True)
class RevisionRow:
    """One line of the list, ready to be shown."""

    number: int
    letter: str
    saved: str
    issued_by: str
    state: str
    verdict: str
    kit: str
    catalogue: str


@dataclass(frozen=True)
class RevisionsPage(BuildPage):
    """All revisions of a build, the latest first."""

    template: ClassVar[str] = "pages/revisions.html"

    rows: tuple[RevisionRow, ...]

    @property
    def heading(self) -> str:
        return f"Revisions of {self.build.code}"


@dataclass(frozen=True)
class RevisionPage(BuildPage):
    """One revision with its verdict; `table` is what differs from the revision before, None for the first."""

    template: ClassVar[str] = "pages/revision.html"

    row: RevisionRow
    report: Report
    table: ChangeTable | None

    @property
    def heading(self) -> str:
        return f"Revision {self.row.letter} of {self.build.code}"


@router.get("/builds/{code}/revisions")
async def revisions(code: CodeInAddress, site: CurrentSite, store: CurrentStore) -> Response:
    """List the revisions of a build."""
    record = find_build(store, code)
    kits = _hub_names(site)
    rows = tuple(_row(each, site, kits) for each in reversed(record.revisions))
    shown = as_it_stands(record, site.checker)
    return site.show(RevisionsPage(shown.foot(site.settings), rows))


@router.get("/builds/{code}/revisions/{number}")
async def revision(
    code: CodeInAddress, number: RevisionNumber, site: CurrentSite, store: CurrentStore
) -> Response:
    """Show one revision, and what differs from the one before it."""
    record = find_build(store, code)
    summary = find_revision(store, record, number)
    shown, table = as_saved(record, summary), None
    if number > 1:
        before = as_saved(record, find_revision(store, record, number - 1))
        table = change_table(before, shown, (f"Revision {before.letter}", f"Revision {shown.letter}"))
    row = _row(summary, site, _hub_names(site))
    return site.show(RevisionPage(shown.foot(site.settings), row, shown.report, table))


def _row(summary: RevisionSummary, site: Site, kits: Mapping[str, str]) -> RevisionRow:
    hub = (summary.combination_key or "").partition("+")[0]
    return RevisionRow(
        number=summary.number,
        letter=summary.letter,
        saved=day_and_clock(summary.saved_at, site.settings.zone),
        issued_by=summary.issued_by or NOT_SAID,
        state=summary.state,
        verdict=VERDICTS[summary.state],
        kit=kits.get(hub, hub),
        catalogue=CATALOGUE.format(number=summary.catalogue_number, revision=summary.catalogue_revision),
    )


def _hub_names(site: Site) -> Mapping[str, str]:
    """Hubs by id; a hub that the catalogue has given up is shown by its id."""
    return {hub.id: hub.name for hub in site.catalogue.hubs} if site.catalogue else {}
