"""A fact is marked by the worst of what it has a part in, and by nothing else."""

from __future__ import annotations

from dataclasses import replace

import pytest

from app.facts.answers import Answers, choice, number
from app.facts.span import Span
from app.report.report import CombinationReport, Finding, Report
from app.web.counter_marks import Mark, marks_of

DISC = choice("rear_brake", {"disc"})
ROTOR = number("rotor_diameter_mm", Span(160_000, 160_000))
OFFSET = number("rotor_offset_mm", Span(14_000, 15_000))
WORDS = {"fit": "Fits", "care": "Take care", "close": "Too close to call", "open": "Not known yet"}
WORDS |= {"gap": "Kit data missing", "no": "Doesn't fit", "skip": "Doesn't apply"}


def finding(state: str, *facts: str, open_facts: tuple[str, ...] = (), leaning: str = "") -> Finding:
    """A finding of which only its state and its facts matter."""
    return Finding(
        f"rule_{state}", "", "brake", state, "", "B", WORDS[state], f"Sentence of {state}.", "", "", facts,
        open_facts, leaning,
    )  # fmt: skip


def report(*findings: Finding) -> Report:
    """A report whose best combination has these findings."""
    best = CombinationReport(
        1, "a+b", "no", "", "", care=False, parts={}, also={}, count=1, findings=findings
    )
    return Report("no", "", "", "", 0, 0, 0, 0, 0, (best,), (), (), (), (), (), (), "", "")


@pytest.mark.parametrize(
    ("better", "worse"),
    [("fit", "care"), ("care", "gap"), ("gap", "close"), ("close", "no"), ("skip", "fit"), ("fit", "no")],
)
def test_the_worst_finding_counts(better: str, worse: str) -> None:
    about = [
        finding(state, "rotor_diameter_mm", open_facts=("rotor_diameter_mm",)) for state in (better, worse)
    ]

    marks = marks_of(report(*about), Answers().with_(ROTOR))

    assert marks["rotor_diameter_mm"].state == worse
    assert marks["rotor_diameter_mm"].words == WORDS[worse]


def test_an_open_check_marks_the_facts_that_it_lacks_and_not_those_that_it_has() -> None:
    lacking = finding("open", "rear_brake", "rotor_diameter_mm", open_facts=("rotor_diameter_mm",))

    marks = marks_of(report(lacking), Answers().with_(DISC))

    assert set(marks) == {"rotor_diameter_mm"}


def test_a_settled_check_marks_only_what_is_known() -> None:
    settled = finding("no", "rear_brake", "rotor_diameter_mm")

    marks = marks_of(report(settled), Answers().with_(DISC))

    assert set(marks) == {"rear_brake"}


def test_a_fact_that_concerns_no_check_of_this_bike_says_so() -> None:
    marks = marks_of(report(finding("skip", "rotor_diameter_mm")), Answers().with_(DISC))

    assert marks["rotor_diameter_mm"].state == "skip"


def test_an_unknown_fact_that_settles_nothing_any_more_is_not_marked() -> None:
    done, skipped = finding("fit", "rear_brake", "rotor_diameter_mm"), finding("skip", "rotor_diameter_mm")

    marks = marks_of(report(done, skipped), Answers().with_(DISC))

    assert set(marks) == {"rear_brake"}


def test_the_reason_stands_at_the_first_number_and_the_others_point_there() -> None:
    failed = finding("no", "rear_brake", "rotor_diameter_mm", "rotor_offset_mm")

    marks = marks_of(report(failed), Answers().with_(DISC, ROTOR, OFFSET))

    assert marks["rotor_diameter_mm"].why == "Sentence of no."
    assert marks["rear_brake"].why == marks["rotor_offset_mm"].why == "See B5"


def test_staff_are_told_which_way_a_close_call_leans() -> None:
    close = finding(
        "close", "rotor_offset_mm", open_facts=("rotor_offset_mm",), leaning="leans no: 0.4 mm short"
    )

    marks = marks_of(report(close), Answers().with_(OFFSET))

    assert marks["rotor_offset_mm"] == Mark(
        "close", "Too close to call", "Leans no: 0.4 mm short. Sentence of close."
    )


def test_what_the_maker_owes_is_told_at_the_number_and_not_at_the_choice() -> None:
    owed = finding("gap", "rear_brake", "rotor_offset_mm")

    marks = marks_of(report(owed), Answers().with_(DISC, OFFSET))

    assert set(marks) == {"rotor_offset_mm"}


def test_before_anything_is_answered_and_without_kits_nothing_is_marked() -> None:
    told = report(finding("open", "rear_brake", open_facts=("rear_brake",)))

    assert marks_of(told, Answers()) == {}
    assert marks_of(replace(told, combinations=()), Answers().with_(DISC)) == {}
    assert marks_of(None, Answers().with_(DISC)) == {}
