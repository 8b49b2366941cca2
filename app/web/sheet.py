"""The workshop sheet: two pages to print, to build from and to sign."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import Annotated, ClassVar, Literal

from fastapi import APIRouter, Query, Request
from markupsafe import Markup
from pydantic import BaseModel, Field
from starlette.responses import Response

from app.report.report import Finding, Report
from app.store.database import Store
from app.web.build_address import CodeInAddress
from app.web.current import CurrentSite, CurrentStore
from app.web.figures import Figure, view_figures, views_of
from app.web.finding_lines import finding_lines, worst_first
from app.web.page import Density
from app.web.qr import qr_code
from app.web.result_parts import PASSED, PartRow, counted, parts_to_pull
from app.web.revisions import MOST_REVISIONS
from app.web.sheet_margins import sheet_margins
from app.web.sheet_parts import (
    BETWEEN,
    FactRow,
    SheetHead,
    bike_line,
    facts_used,
    is_draft,
    kit_line,
    sheet_head,
)
from app.web.shown_build import BuildPage, ShownBuild, as_it_stands, as_saved, find_build, find_revision
from app.web.site import Site

router = APIRouter(include_in_schema=False)
# Of more points than these, what can't stop the fit and isn't settled is named by its title alone.
MOST_IN_FULL = 15
USUAL_PT, LARGE_PT = 8, 18
UNSETTLED = ("1 thing to know isn't settled", "{count} things to know aren't settled")
NO_DRAWINGS = "No drawings: nothing of it has been measured, or catalogue or rules have changed since."


class Wanted(BaseModel):
    """Which sheet: of the latest revision where none is named, and in large print where that is asked for."""

    revision: int | None = Field(default=None, ge=1, le=MOST_REVISIONS)
    print: Literal["large"] | None = None
    drawings: Literal["with"] | None = None


AsWanted = Annotated[Wanted, Query()]


@dataclass(frozen=True)
class SheetPage(BuildPage):
    """A sheet. On a draft the open points come first, and there is nothing to sign.

    margins  address of the style sheet that writes into the margins of every page
    usual_print, large_print, with_drawings  addresses of this same sheet in either size, and with a page more
    points   the findings that did not pass, in full, as HTML
    titled   the titles of those that are too many to stand there in full, in one paragraph
    passed   the titles of those that did, in one paragraph
    """

    template: ClassVar[str] = "pages/sheet.html"
    density: ClassVar[Density] = "sheet"

    shop: str
    head: SheetHead
    is_draft: bool
    is_large: bool
    margins: str
    usual_print: str
    large_print: str
    with_drawings: str
    qr: Markup
    address: str
    bike: str
    kit: str
    report: Report
    parts: tuple[PartRow, ...]
    cautions: tuple[str, ...]
    facts: tuple[FactRow, ...]
    points: Markup
    titled: str
    titled_counted: str
    passed: str
    passed_counted: str
    drawings: tuple[Figure, ...]
    drawings_note: str

    @property
    def heading(self) -> str:
        return "Workshop sheet"


@router.get("/builds/{code}/sheet")
async def sheet(
    code: CodeInAddress, wanted: AsWanted, request: Request, site: CurrentSite, store: CurrentStore
) -> Response:
    """Show the sheet of a revision, the latest where none is named, or of the draft."""
    shown = _shown(site, store, code, wanted.revision)
    base = site.settings.public_address or str(request.base_url).rstrip("/")
    page = sheet_page(site, shown, base, is_large=wanted.print is not None)
    return site.show(with_drawings(site, shown, page) if wanted.drawings else page)


@router.get("/builds/{code}/sheet/margins.css")
async def margins(code: CodeInAddress, wanted: AsWanted, site: CurrentSite, store: CurrentStore) -> Response:
    """What every page of that sheet says in its margins."""
    head = sheet_head(_shown(site, store, code, wanted.revision), site.settings)
    return sheet_margins(head=head.warning, foot=head.foot, size_pt=LARGE_PT if wanted.print else USUAL_PT)


def _shown(site: Site, store: Store, code: str, revision: int | None) -> ShownBuild:
    record = find_build(store, code)
    if revision is None:
        return as_it_stands(record, site.checker)
    return as_saved(record, find_revision(store, record, revision))


def sheet_page(site: Site, shown: ShownBuild, address: str, *, is_large: bool = False) -> SheetPage:
    """The sheet of a report that is ready; `address` is the shop's own."""
    report, best = shown.report, shown.report.best
    findings = worst_first(best.findings if best else ())
    in_full, by_title = _in_full_or_by_title(findings.open)
    here = f"/builds/{shown.code}/sheet"
    wanted = f"?revision={shown.revision.number}" if shown.revision else ""
    large = f"{wanted}&print=large" if wanted else "?print=large"
    return SheetPage(
        build=shown.foot(site.settings),
        shop=site.settings.shop_name,
        head=sheet_head(shown, site.settings),
        is_draft=is_draft(shown),
        is_large=is_large,
        margins=f"{here}/margins.css{large if is_large else wanted}",
        usual_print=f"{here}{wanted}",
        large_print=f"{here}{large}",
        with_drawings=f"{here}{wanted}&drawings=with" if wanted else f"{here}?drawings=with",
        qr=qr_code(f"{address}/builds/{shown.code}"),
        address=address,
        bike=bike_line(shown.answers),
        kit=kit_line(report),
        report=report,
        parts=parts_to_pull(report),
        cautions=_not_said_yet(report.cautions, in_full) if is_draft(shown) else report.cautions,
        facts=facts_used(shown),
        points=finding_lines(site.templates, in_full, with_anchors=False),
        titled=BETWEEN.join(each.title for each in by_title),
        titled_counted=counted(UNSETTLED, len(by_title)),
        passed=BETWEEN.join(each.title for each in findings.passed),
        passed_counted=counted(PASSED, len(findings.passed)),
        drawings=(),
        drawings_note="",
    )


def _in_full_or_by_title(points: list[Finding]) -> tuple[list[Finding], list[Finding]]:
    if len(points) <= MOST_IN_FULL:
        return points, []
    in_full = [point for point in points if point.weight == "B" or point.outcome == "failed"]
    return in_full, [point for point in points if point not in in_full]


def _not_said_yet(cautions: Sequence[str], points: Sequence[Finding]) -> tuple[str, ...]:
    """The cautions that don't stand among the open points of a draft already."""
    said = {point.sentence for point in points}
    return tuple(caution for caution in cautions if caution not in said)


def with_drawings(site: Site, shown: ShownBuild, page: SheetPage) -> SheetPage:
    """The sheet with a third page of drawings, or with the reason why there are none."""
    views = views_of(shown.report, shown.answers, site.checker)
    figures = tuple(view_figures(views, shown).values())
    return replace(page, drawings=figures, drawings_note="" if figures else NO_DRAWINGS)
