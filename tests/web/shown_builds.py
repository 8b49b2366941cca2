"""Pages of demo bikes without a store: as the first revision of each, made of the report that is ready."""

from __future__ import annotations

from functools import cache
from html import unescape

from app.facts.answers_json import answers_to_json
from app.store.records import BuildRecord, RevisionRecord
from app.web.app import create_app
from app.web.result import result_page
from app.web.settings import Settings
from app.web.sheet import sheet_page
from app.web.shown_build import ShownBuild
from app.web.site import Site
from tests.report.bikes import BIKES, bike, report_on
from tests.store.samples import MORNING

CODE = "7Q4K-2M9Y"
ADDRESS = "http://127.0.0.1:8000"


@cache
def site() -> Site:
    """The site of a shop with the demo catalogue."""
    made: Site = create_app(Settings()).state.site
    return made


@cache
def first_revision(name: str) -> ShownBuild:
    """A demo bike as its first revision froze it."""
    report, answers = report_on(name), bike(name)
    facts = answers_to_json(answers)
    frozen = RevisionRecord(
        number=1,
        state=report.state,
        combination_key=report.best.key if report.best else None,
        catalogue_number=1,
        catalogue_revision=report.catalogue_revision,
        rules_revision=report.rules_revision,
        issued_by="Sam",
        saved_at=MORNING,
        facts=facts,  # type: ignore[arg-type]
        report={},
    )
    record = BuildRecord(CODE, None, MORNING, MORNING, facts, {}, (frozen,), frozen)  # type: ignore[arg-type]
    return ShownBuild(record, frozen, answers, report)


@cache
def result_of(name: str) -> str:
    """The result page of a demo bike, as HTML."""
    return site().render(result_page(site(), first_revision(name)))


@cache
def sheet_of(name: str) -> str:
    """The workshop sheet of a demo bike, as HTML."""
    return site().render(sheet_page(site(), first_revision(name), ADDRESS))


def words_of(html: str) -> str:
    """The HTML with its quotes and signs as they are read."""
    return unescape(html)


def demo_bike(state: str) -> str:
    """The name of a demo bike whose best kit is in this state."""
    return next(name for name in BIKES if report_on(name).state == state)
