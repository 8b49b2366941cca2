"""Worked examples for the API's description: a bike as it is sent, and what this shop answers to it."""

from __future__ import annotations

from dataclasses import replace
from datetime import UTC, datetime
from typing import Any

from app.catalogue.catalogue import KINDS, Catalogue
from app.facts.answers import Answers
from app.facts.json_reader import read_json
from app.report.build import Checker
from app.report.report import CombinationReport, Report, report_to_json
from app.store.codes import EXAMPLE as CODE
from app.store.records import BuildRecord, RevisionRecord
from app.web.api.build_record import SavedBuild, WholeBuild, saved_build, whole_build
from app.web.api.fact_table import FactTable, fact_table
from app.web.api.rule_book import RuleBook, rule_book
from app.web.draft import stored_form

FACTS_SENT: dict[str, Any] = {
    "bike": {
        "frame_material": "steel",
        "dropout_kind": "slotted_vertical",
        "dropout_width_mm": {"value": 135.2, "plus_minus": 0.3, "tool": "calipers"},
        "slot_width_mm": 10.2,
        "rear_brake": ["rim", "none"],
        "drivetrain": "derailleur",
        "cassette_interface": "hg",
        "cassette_speeds": 9,
        "smallest_cog": 11,
        "stay_width_mm": "17..18",
        "rim_holes": None,
    },
    "wish": {"total_mass_kg": 110, "assist": "cadence", "region": "eu"},
}
BUILD_SENT = {**FACTS_SENT, "job": "Blue tourer, back wheel", "issued_by": "Workshop"}
UNREAD_SENT = {
    "bike": {"dropout_width_mm": 1346, "rear_brake": "coaster", "rotor_diameter_mm": 160, "slot_widht_mm": 10}
}
MOMENT = datetime(2027, 5, 3, 10, 42, 7, tzinfo=UTC)
# An example shows the first of what there is many of.
FEW = 3


def a_report(checker: Checker) -> Report:
    """The report on the bike of the example, with its lists cut short."""
    whole = checker.report(_answers())
    return replace(
        whole,
        combinations=tuple(map(_short, whole.combinations[:1])),
        kits=whole.kits[:FEW],
        parts_to_pull=whole.parts_to_pull[:FEW],
        jobs=whole.jobs[:FEW],
        cautions=whole.cautions[:FEW],
        ask_next=whole.ask_next[:FEW],
    )


def a_saved_build(report: Report) -> SavedBuild:
    """The answer to saving the bike of the example."""
    return saved_build(CODE, _revision(report))


def a_whole_build(report: Report) -> WholeBuild:
    """The answer to asking for it."""
    revision = _revision(report)
    facts = stored_form([*_answers().values()])
    return whole_build(BuildRecord(CODE, None, MOMENT, MOMENT, facts, {}, (revision,), revision))


def some_facts() -> FactTable:
    """A choice and a number of the table."""
    return FactTable(fact_table().facts[:FEW])


def some_rules(checker: Checker) -> RuleBook:
    """The first rules of the book."""
    book = rule_book(checker)
    return replace(book, rules=book.rules[:FEW])


def some_parts(catalogue: Catalogue) -> Catalogue:
    """The first part of each kind."""
    first: dict[str, Any] = {plural: catalogue.parts(plural)[:1] for plural in KINDS}
    return replace(catalogue, **first)


def _answers() -> Answers:
    return read_json(FACTS_SENT).answers


def _short(combination: CombinationReport) -> CombinationReport:
    return replace(combination, findings=combination.findings[:FEW])


def _revision(report: Report) -> RevisionRecord:
    return RevisionRecord(
        number=1,
        state=report.state,
        combination_key=report.best.key if report.best else None,
        catalogue_number=1,
        catalogue_revision=report.catalogue_revision,
        rules_revision=report.rules_revision,
        issued_by="",
        saved_at=MOMENT,
        facts=stored_form([*_answers().values()]),
        report=report_to_json(report),
    )
