"""The numbers of a finding that drawings use are those that its sentence names."""

from __future__ import annotations

from app.facts.span import Span
from app.report.numbers import span_text
from app.report.report import Finding, report_from_json, report_to_json
from tests.report.bikes import BIKES, report_on


def about(name: str, rule_id: str) -> Finding:
    best = report_on(name).best
    assert best
    return next(each for each in best.findings if each.rule_id == rule_id)


def test_a_close_call_keeps_its_reading_and_its_limits() -> None:
    width = about("tape-measured-135", "dropout_width")

    assert width.state == "close"
    assert width.measured
    assert width.measured.low
    assert width.measured.high
    low, high = width.measured.reading
    assert low < width.measured.low[0] <= high or low <= width.measured.high[1] < high


def test_what_nobody_has_measured_has_no_numbers() -> None:
    width = about("almost-empty", "dropout_width")

    assert width.state == "open"
    assert width.measured is None


def test_the_sentence_of_a_finding_names_the_reading_that_it_keeps() -> None:
    kits = [best for name in BIKES if (best := report_on(name).best)]
    close = [each for kit in kits for each in kit.findings if each.state == "close" and each.measured]

    assert close
    for each in close:
        assert each.measured
        text = span_text(Span(*each.measured.reading), each.unit, each.measured.places)
        assert text in each.sentence


def test_the_numbers_come_back_from_a_kept_report() -> None:
    report = report_on("tape-measured-135")

    assert report_from_json(report_to_json(report)) == report


def test_a_report_from_before_numbers_were_kept_is_still_read() -> None:
    plain = report_to_json(report_on("tape-measured-135"))
    for combination in plain["combinations"]:
        for finding in combination["findings"]:
            del finding["measured"]

    best = report_from_json(plain).best

    assert best
    assert {finding.measured for finding in best.findings} == {None}
