"""A build with the report that is shown of it: the one that a revision froze, or one that is made now."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime

from fastapi import HTTPException

from app.facts.answers import Answers
from app.facts.contradictions import contradictions
from app.report.build import Checker
from app.report.report import Report, report_from_json
from app.store import builds
from app.store.database import Store
from app.store.records import BuildRecord, RevisionRecord, RevisionSummary
from app.web.draft import answers_of, without_contradictions
from app.web.page import Page, TitleBlock
from app.web.settings import Settings
from app.web.shop_time import day_and_clock

UNKNOWN_CODE = "We have no check with the code {code}. Check the last four characters."
UNKNOWN_REVISION = "There is no such revision of {code}. Its revisions are listed under its code."
JUDGED_NOW = "judged now"
NO_KITS = "This shop hasn't set up its kits yet."


@dataclass(frozen=True, slots=True)
class BuildFoot:
    """What every page about a build needs of it: its code, and the box at the foot."""

    code: str
    title_block: TitleBlock


@dataclass(frozen=True)
class BuildPage(Page):
    """A page about one build."""

    build: BuildFoot

    @property
    def title_block(self) -> TitleBlock:
        return self.build.title_block


@dataclass(frozen=True, slots=True)
class ShownBuild:
    """What pages and sheets show. `revision` is None where the draft was judged just now."""

    record: BuildRecord
    revision: RevisionSummary | None
    answers: Answers
    report: Report

    @property
    def code(self) -> str:
        """The code as it is shown."""
        return self.record.code

    @property
    def letter(self) -> str:
        """The letter of the revision, or nothing for a draft."""
        return self.revision.letter if self.revision else ""

    @property
    def saved_at(self) -> datetime:
        """When what is shown was saved, in UTC."""
        return self.revision.saved_at if self.revision else self.record.changed_at

    def foot(self, settings: Settings) -> BuildFoot:
        """What its pages say of it."""
        saved = day_and_clock(self.saved_at, settings.zone)
        revision = self.letter or (JUDGED_NOW if self.record.revisions else "")
        return BuildFoot(self.code, TitleBlock(self.code, revision, self.report.catalogue_revision, saved))


def find_build(store: Store, code: str) -> BuildRecord:
    """The build with this code, or a page that says there is none."""
    record = builds.load(store, code)
    if record is None:
        raise HTTPException(404, UNKNOWN_CODE.format(code=code))
    return record


def find_revision(store: Store, record: BuildRecord, number: int) -> RevisionRecord:
    """One revision of a build, or a page that says there is none."""
    latest = record.latest
    found = latest if latest and latest.number == number else builds.revision(store, record.code, number)
    if found is None:
        raise HTTPException(404, UNKNOWN_REVISION.format(code=record.code))
    return found


def as_saved(record: BuildRecord, revision: RevisionRecord) -> ShownBuild:
    """A build as a revision froze it, with the words of that day."""
    return ShownBuild(record, revision, answers_of(revision), report_from_json(revision.report))


def as_judged_now(record: BuildRecord, checker: Checker | None) -> ShownBuild:
    """A build as it stands, judged by the catalogue and the rules in force."""
    if checker is None:
        raise HTTPException(404, NO_KITS)
    answers = answers_of(record)
    believed = without_contradictions(answers, contradictions(answers))
    return ShownBuild(record, None, answers, checker.report(believed))


def as_it_stands(record: BuildRecord, checker: Checker | None) -> ShownBuild:
    """The latest revision, or the draft judged now where there is none yet."""
    return as_saved(record, record.latest) if record.latest else as_judged_now(record, checker)
