"""The result of a check: the verdict, what to do next, the kit with its parts and jobs, and every finding."""

from __future__ import annotations

from collections.abc import Hashable, Mapping
from dataclasses import dataclass
from functools import lru_cache
from typing import ClassVar, Literal

from fastapi import APIRouter
from markupsafe import Markup
from starlette.responses import Response

from app.report.report import Finding, Report
from app.web.build_address import CodeInAddress
from app.web.current import CurrentSite, CurrentStore
from app.web.figures import Sight, beside_findings, sight_of
from app.web.finding_lines import NO_FIGURES, finding_lines, worst_first
from app.web.out_of_date import judged_just_now, moved_on
from app.web.pieces import piece
from app.web.result_parts import (
    PASSED,
    SKIPPED,
    NextStep,
    count_kits,
    counted,
    next_step,
    other_kits,
    parts_of_kit,
)
from app.web.ruler import Ruler
from app.web.shown_build import BuildPage, ShownBuild, as_it_stands, as_judged_now, find_build
from app.web.site import Site

# Reports of which the findings are kept as HTML.
MOST_LISTED = 128

router = APIRouter(include_in_schema=False)


@dataclass(frozen=True)
class ResultPage(BuildPage):
    """What a customer and the shop see of a check.

    moved_on  what changed since the revision that is shown
    fresh     that it was judged just now, or empty
    parts     the parts to pull, or of the nearest kit where nothing fits
    open      the findings to look at, as HTML; passed and skipped are folded
    """

    template: ClassVar[str] = "pages/result.html"

    moved_on: tuple[str, ...]
    fresh: str
    report: Report
    kit: str
    ruler: Ruler
    next_step: NextStep | None
    parts: Markup
    jobs: Markup
    cautions: Markup
    others: Markup
    others_counted: str
    open: Markup
    passed: Markup
    passed_counted: str
    skipped: Markup
    skipped_counted: str

    @property
    def heading(self) -> str:
        return self.report.verdict


@router.get("/builds/{code}")
async def result(
    code: CodeInAddress, site: CurrentSite, store: CurrentStore, judged: Literal["now"] | None = None
) -> Response:
    """Show the result of a check: as its latest revision says it, or as it is judged now."""
    record = find_build(store, code)
    shown = as_judged_now(record, site.checker) if judged else as_it_stands(record, site.checker)
    return site.show(result_page(site, shown))


def result_page(site: Site, shown: ShownBuild) -> ResultPage:
    """The page of a report that is ready."""
    report, best = shown.report, shown.report.best
    others, sight = other_kits(report), sight_of(site, shown)
    listed = _list_findings(site, shown) if sight is None else _kept_list(sight)
    return ResultPage(
        build=shown.foot(site.settings),
        moved_on=moved_on(shown, site.checker),
        fresh=judged_just_now(shown),
        report=report,
        kit=best.parts["hub"].name if best else "",
        ruler=Ruler(report.settled, report.total),
        next_step=next_step(report),
        parts=_piece(site, "kit_parts", parts_of_kit(report)),
        jobs=_piece(site, "job_list", report.jobs),
        cautions=_piece(site, "caution_list", report.cautions),
        others=_piece(site, "kit_list", others),
        others_counted=count_kits(others, best_fits=report.state in {"fit", "care"}),
        open=listed.open,
        passed=listed.passed,
        passed_counted=listed.passed_counted,
        skipped=listed.skipped,
        skipped_counted=listed.skipped_counted,
    )


@dataclass(frozen=True, slots=True)
class _Listed:
    """All findings of the kit as HTML, in three lists, two of them folded under their counts."""

    open: Markup
    passed: Markup
    passed_counted: str
    skipped: Markup
    skipped_counted: str


@lru_cache(maxsize=MOST_LISTED)
def _kept_list(sight: Sight) -> _Listed:
    return _list_findings(*sight.shown)


def _list_findings(site: Site, shown: ShownBuild) -> _Listed:
    best = shown.report.best
    findings = worst_first(best.findings if best else ())
    beside = beside_findings(site, shown, [*findings.open, *findings.passed])
    return _Listed(
        open=_lines(site, findings.open, beside),
        passed=_lines(site, findings.passed, beside),
        passed_counted=counted(PASSED, len(findings.passed)),
        skipped=_lines(site, findings.skipped),
        skipped_counted=counted(SKIPPED, len(findings.skipped)),
    )


def _lines(site: Site, findings: list[Finding], figures: Mapping[str, Markup] = NO_FIGURES) -> Markup:
    return finding_lines(site.templates, findings, with_anchors=True, figures=figures)


def _piece(site: Site, component: str, rows: tuple[Hashable, ...]) -> Markup:
    return piece(site.templates, component, rows) if rows else Markup()
