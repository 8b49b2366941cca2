"""The drawings of a build on its pages: views beside the findings that they explain, scales of close calls.

A view is worked out from parts and tables, so that only a report judged by those in force can have one.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from functools import lru_cache
from typing import Any

from markupsafe import Markup

from app.drawings.of_kit import AXLE, SIDE_VIEW, drawing_of, explained, is_worth_drawing
from app.drawings.span_scale import span_scale
from app.drawings.subject import subject_of
from app.drawings.svg import Drawing
from app.facts.answers import Answers
from app.report.build import Checker
from app.report.report import CombinationReport, Finding, Report
from app.web.shown_build import ShownBuild
from app.web.site import Site

CAPTIONS: Mapping[str, str] = {
    SIDE_VIEW: "From the left, bike facing left, to scale.",
    AXLE: "From behind, cut along the axle, to scale.",
}
MOST_KEPT = 256


@dataclass(frozen=True, slots=True)
class Figure:
    """A drawing on a page, with what is read under it and its own address; both empty where it needs none."""

    svg: Markup
    caption: str = ""
    address: str = ""


@dataclass(frozen=True, slots=True)
class _Kit:
    """One bike with one kit, known by its answers, its parts and what judges them."""

    revisions: tuple[str, ...]
    key: str
    answers: Answers
    seen: tuple[CombinationReport, Answers, Checker] = field(compare=False)


def view_of(report: Report, answers: Answers, checker: Checker | None, name: str) -> Drawing | None:
    """One view of the best kit; None where catalogue or rules have moved on, or nothing of it is known."""
    best = report.best
    if best is None or checker is None:
        return None
    revisions = (report.catalogue_revision, report.rules_revision)
    if revisions != (checker.catalogue.revision, checker.rules_revision):
        return None
    return _view(_Kit(revisions, best.key, answers, (best, answers, checker)), name)


@lru_cache(maxsize=MOST_KEPT)
def _view(kit: _Kit, name: str) -> Drawing | None:
    best, answers, checker = kit.seen
    subject = subject_of(best, answers, checker.catalogue, checker.standards)
    return drawing_of(subject, name) if subject and is_worth_drawing(subject, name) else None


def views_of(report: Report, answers: Answers, checker: Checker | None) -> Mapping[str, Drawing]:
    """All views of the best kit that there are, by their names."""
    drawn = {name: view_of(report, answers, checker, name) for name in CAPTIONS}
    return {name: drawing for name, drawing in drawn.items() if drawing is not None}


def view_figures(views: Mapping[str, Drawing], shown: ShownBuild) -> dict[str, Figure]:
    """The views of a build as figures, each with its own address."""
    query = _query(shown)
    return {
        name: Figure(
            inline(drawing),
            f"{CAPTIONS[name]} {drawing.remark}",
            f"/builds/{shown.code}/drawings/{name}.svg{query}",
        )
        for name, drawing in views.items()
    }


def _query(shown: ShownBuild) -> str:
    """What the address of a drawing says of its revision; nothing where there is none yet."""
    if shown.revision is not None:
        return f"?revision={shown.revision.number}"
    return "?judged=now" if shown.record.revisions else ""


@dataclass(frozen=True, slots=True)
class Sight:
    """What a page shows of a report: a bike, its kit, its judges, and the address."""

    kit: _Kit
    address: str
    shown: tuple[Site, ShownBuild] = field(compare=False)


def sight_of(site: Site, shown: ShownBuild) -> Sight | None:
    """What a page of this build shows; None where there is no kit to show."""
    report, best, checker = shown.report, shown.report.best, site.checker
    if best is None or checker is None:
        return None
    judged_by = (report.catalogue_revision, report.rules_revision)
    now = (checker.catalogue.revision, checker.rules_revision)
    kit = _Kit((*judged_by, *now), best.key, shown.answers, (best, shown.answers, checker))
    return Sight(kit, f"{shown.code}{_query(shown)}", (site, shown))


def beside_findings(site: Site, shown: ShownBuild, findings: Sequence[Finding]) -> Mapping[str, Markup]:
    """By rule, what stands behind its finding: its scale where it is a close call, a view that explains it.

    findings   in the order in which they are shown: the first that a view explains gets it
    """
    figures: dict[str, list[Figure]] = {}
    for finding in findings:
        scale = span_scale(finding) if finding.state == "close" else None
        if scale is not None:
            figures.setdefault(finding.rule_id, []).append(Figure(inline(scale)))
    views = views_of(shown.report, shown.answers, site.checker)
    for name, figure in view_figures(views, shown).items():
        rule_id = explained(name, findings)
        if rule_id:
            figures.setdefault(rule_id, []).append(figure)
    return {rule_id: figures_html(site, listed) for rule_id, listed in figures.items()}


def figures_html(site: Site, figures: Sequence[Figure]) -> Markup:
    """The HTML of figures, one after the other."""
    module: Any = site.templates.get_template("components/drawing.html").module
    return Markup("").join(module.drawing(figure) for figure in figures)


def inline(drawing: Drawing) -> Markup:
    """A drawing as it stands in a page."""
    return Markup(drawing.inline())  # noqa: S704 - a drawing escapes every word in it
