"""What differs between two reports on one bike."""

from __future__ import annotations

from dataclasses import replace

from app.facts.answers import Answers, choice, number
from app.facts.span import Span
from app.report.changes import changed_facts, changes
from app.report.report import CombinationReport, Finding, Report
from tests.report.bikes import report_on

BEFORE = report_on("hardtail-148-xd")


def with_findings(findings: tuple[Finding, ...]) -> Report:
    best = BEFORE.best
    assert best
    return replace(BEFORE, combinations=(replace(best, findings=findings), *BEFORE.combinations[1:]))


def findings() -> tuple[Finding, ...]:
    best: CombinationReport | None = BEFORE.best
    assert best
    return best.findings


def test_a_report_differs_from_itself_in_nothing() -> None:
    assert not changes(BEFORE, BEFORE).any


def test_a_finding_that_says_something_else_has_moved() -> None:
    first, *rest = findings()
    after = with_findings((replace(first, sentence="The dropouts are closed now."), *rest))

    moved = changes(BEFORE, after)

    assert [each.rule_id for each in moved.findings] == [first.rule_id]
    assert moved.findings[0].before == first
    assert not moved.findings[0].changed_state
    assert not moved.verdict


def test_findings_whose_verdict_moved_come_first() -> None:
    first, second, *rest = findings()
    after = with_findings((replace(first, sentence="Otherwise."), replace(second, state="gap"), *rest))

    assert [each.rule_id for each in changes(BEFORE, after).findings] == [second.rule_id, first.rule_id]


def test_a_rule_that_came_or_went_has_no_finding_on_one_side() -> None:
    without_first = with_findings(findings()[1:])

    gone, come = changes(BEFORE, without_first), changes(without_first, BEFORE)

    assert [(each.before, each.after) for each in gone.findings] == [(findings()[0], None)]
    assert [(each.before, each.after) for each in come.findings] == [(None, findings()[0])]
    assert gone.findings[0].title == come.findings[0].title


def test_another_verdict_and_another_kit_are_told() -> None:
    best = BEFORE.best
    assert best
    other = replace(BEFORE, state="no", combinations=(replace(best, key="rill+other"),))

    moved = changes(BEFORE, other)

    assert moved.verdict
    assert moved.kit
    assert moved.any


def test_a_report_without_kits_can_be_compared() -> None:
    empty = replace(BEFORE, combinations=())

    assert len(changes(BEFORE, empty).findings) == len(findings())


def test_facts_changed_where_typed_or_read_otherwise() -> None:
    width = number("dropout_width_mm", Span(134_700, 135_300), "135")
    before = Answers().with_(width, choice("rear_brake", {"disc"}, "disc"))
    after = Answers().with_(replace(width, typed="135.0"), choice("frame_material", {"steel"}, "steel"))

    assert changed_facts(before, after) == ("frame_material", "dropout_width_mm", "rear_brake")
    assert changed_facts(before, before) == ()
