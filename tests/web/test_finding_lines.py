"""Findings are filled into a cast of their macro, and read exactly as if the macro had been called."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

import pytest

from app.report.report import Finding
from app.report.wording import WORDS
from app.web.finding_lines import finding_lines, worst_first
from app.web.settings import PROJECT
from app.web.site import make_templates
from tests.report.bikes import BIKES, report_on

TEMPLATES = make_templates(PROJECT / "templates")


@dataclass(frozen=True)
class Item:
    """A finding by the names that the macro reads."""

    rule_id: str
    title: str
    state: str
    words: str
    sentence: str
    remedy: str
    limit_source: str


def called(finding: Finding, anchor: str) -> str:
    macro: Any = TEMPLATES.get_template("components/finding.html").module
    item = Item(
        finding.rule_id, finding.title, finding.state, finding.words, finding.sentence, finding.remedy,
        finding.source,
    )  # fmt: skip
    return str(macro.finding(item, anchor))


def made_up(state: str, remedy: str, text: str = "Slot 10 mm.") -> Finding:
    return Finding(
        "slot_width", text, "axle", state, "passed", "B", WORDS[state], text, remedy, text, (), ()
    )  # fmt: skip


@pytest.mark.parametrize("name", BIKES)
@pytest.mark.parametrize("with_anchors", [True, False])
def test_every_finding_of_a_demo_bike_reads_as_its_macro_says_it(name: str, with_anchors: bool) -> None:  # noqa: FBT001
    best = report_on(name).best
    assert best

    html = finding_lines(TEMPLATES, best.findings, with_anchors=with_anchors)

    assert html == "".join(called(each, each.rule_id if with_anchors else "") for each in best.findings)


@pytest.mark.parametrize("state", WORDS)
@pytest.mark.parametrize("remedy", ["", "Take 100 % of it, {as} is."])
@pytest.mark.parametrize("text", ["<b> & \"quotes\" 'too'", "%s %(title)s {0} \ue000", "Ω ± 0.3\u202fmm"])
def test_no_text_can_leave_its_place(state: str, remedy: str, text: str) -> None:
    finding = made_up(state, remedy, text)

    assert finding_lines(TEMPLATES, [finding], with_anchors=True) == called(finding, finding.rule_id)


def test_no_findings_are_no_html() -> None:
    assert finding_lines(TEMPLATES, [], with_anchors=True) == ""


def test_the_same_finding_with_another_sentence_is_another_line() -> None:
    one, other = made_up("fit", "", "Slot 10 mm."), made_up("fit", "", "Slot 11 mm.")

    html = finding_lines(TEMPLATES, [one, other, one], with_anchors=False)

    assert html == called(one, "") + called(other, "") + called(one, "")


@pytest.mark.parametrize("name", BIKES)
def test_what_stops_a_fit_comes_first_and_what_passed_is_folded(name: str) -> None:
    best = report_on(name).best
    assert best

    found = worst_first(best.findings)

    order = [("failed", "B"), ("cantTell", "B"), ("failed", "C"), ("cantTell", "C")]
    places = [order.index((each.outcome, each.weight)) for each in found.open]
    assert places == sorted(places)
    assert {each.state for each in found.passed} <= {"fit"}
    assert {each.state for each in found.skipped} <= {"skip"}
    assert len(found.open) + len(found.passed) + len(found.skipped) == len(best.findings)
