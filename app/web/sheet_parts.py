"""The pieces of a workshop sheet, worded: warning, title block, the bike, the kit, the facts used."""

from __future__ import annotations

from dataclasses import dataclass

from app.facts.answers import Answer, Answers
from app.facts.fact import Fact, NumberFact
from app.facts.shown import what_we_read
from app.facts.table import FACTS
from app.report.report import Report
from app.web.settings import Settings
from app.web.shop_time import day_and_clock
from app.web.shown_build import ShownBuild

DRAFT = "DRAFT, NOT FOR BUILDING"
SUPERSEDED = "SUPERSEDED BY REVISION {letter}"
BOTH = "{draft}. {superseded}"
NOT_SAVED = "none yet"
CATALOGUE, CATALOGUE_NUMBERED = "{revision}", "{number} ({revision})"
FOOT, FOOT_OF_DRAFT = "{code}, revision {letter}", "{code}, no revision yet"
# What tells one bike from another at a glance.
TELLING = (
    "frame_material", "dropout_kind", "dropout_width_mm", "rear_brake", "drivetrain", "cassette_interface",
    "cassette_speeds", "bead_seat_mm", "tyre_width_mm",
)  # fmt: skip
LABELLED = "{label} {value}"
BETWEEN = " · "
NOTHING_KNOWN = "Nothing is known of it yet."


@dataclass(frozen=True, slots=True)
class SheetHead:
    """The title block of a sheet, and what its pages repeat: a warning above, code and revision below."""

    revision: str
    catalogue: str
    rules: str
    issued: str
    issued_by: str
    job: str
    warning: str
    foot: str


@dataclass(frozen=True, slots=True)
class FactRow:
    """One fact that the report rests on: letter and label, value with its ±, tool."""

    letter: str
    label: str
    value: str
    tool: str


def is_draft(shown: ShownBuild) -> bool:
    """Whether nobody may build from this sheet: no revision, not settled, or not fitting."""
    return shown.revision is None or shown.report.state not in {"fit", "care"}


def sheet_head(shown: ShownBuild, settings: Settings) -> SheetHead:
    """The title block."""
    revision, report = shown.revision, shown.report
    foot = FOOT if revision else FOOT_OF_DRAFT
    words = CATALOGUE_NUMBERED if revision else CATALOGUE
    number = revision.catalogue_number if revision else 0
    return SheetHead(
        revision=shown.letter or NOT_SAVED,
        catalogue=words.format(number=number, revision=report.catalogue_revision),
        rules=report.rules_revision,
        issued=day_and_clock(shown.saved_at, settings.zone),
        issued_by=revision.issued_by if revision else "",
        job=shown.record.job or "",
        warning=_warning(shown),
        foot=foot.format(code=shown.code, letter=shown.letter),
    )


def _warning(shown: ShownBuild) -> str:
    latest = shown.record.revisions[-1] if shown.record.revisions else None
    old = latest is not None and shown.revision is not None and latest.number > shown.revision.number
    superseded = SUPERSEDED.format(letter=latest.letter) if latest and old else ""
    if not is_draft(shown):
        return superseded
    return BOTH.format(draft=DRAFT, superseded=superseded) if superseded else DRAFT


def bike_line(answers: Answers) -> str:
    """What tells this bike from another, in one line."""
    known = [_labelled(name, answers) for name in TELLING if answers.is_known(name)]
    return BETWEEN.join(known) or NOTHING_KNOWN


def _labelled(name: str, answers: Answers) -> str:
    fact = FACTS[name]
    return LABELLED.format(label=fact.label.lower(), value=what_we_read(fact, answers[name]))


def kit_line(report: Report) -> str:
    """The parts that the kit is made of, in one line."""
    return BETWEEN.join(part.name for part in report.best.parts.values()) if report.best else ""


def facts_used(shown: ShownBuild) -> tuple[FactRow, ...]:
    """The answers that some check of the kit rests on, in the order of the table."""
    best = shown.report.best
    findings = best.findings if best else ()
    used = {name for finding in findings if finding.state != "skip" for name in finding.facts}
    return tuple(_fact_row(FACTS[name], answer) for name, answer in shown.answers.items() if name in used)


def _fact_row(fact: Fact, answer: Answer) -> FactRow:
    tool = fact.tool(answer.tool).name if isinstance(fact, NumberFact) and answer.known else answer.tool
    return FactRow(fact.letter, fact.label, what_we_read(fact, answer), tool)
