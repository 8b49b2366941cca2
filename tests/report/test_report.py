"""What a shop gets told about the demo bikes."""

from __future__ import annotations

import pytest

from app.facts.answers import Answers, choice, number
from app.facts.span import Span
from app.report.next_question import ask_next
from app.report.report import CombinationReport, Finding
from app.report.verdict import also_open, deciding, state_of_kit
from tests.report.bikes import BIKES, bike, checker, report_on

every_bike = pytest.mark.parametrize("name", BIKES)


def finding(state: str, outcome: str, weight: str = "B", **more: object) -> Finding:
    plain = {
        "rule_id": "slot_width", "title": "Slot", "family": "axle", "words": "", "sentence": "Measured.",
        "remedy": "", "source": "", "facts": (), "open_facts": (),
    }  # fmt: skip
    return Finding(**{**plain, "state": state, "outcome": outcome, "weight": weight, **more})  # type: ignore[arg-type]


FITS, CARES = finding("fit", "passed"), finding("care", "failed", "C")
OPEN, CLOSE, STOPS = finding("open", "cantTell"), finding("close", "cantTell"), finding("no", "failed")


@pytest.mark.parametrize(
    ("findings", "state"),
    [
        ((FITS,), "fit"),
        ((FITS, CARES), "care"),
        ((FITS, CARES, CLOSE), "close"),
        ((FITS, CLOSE, OPEN), "open"),
        ((OPEN, STOPS, CARES), "no"),
        ((finding("open", "cantTell", "C"),), "fit"),
    ],
)
def test_the_verdict_is_the_first_that_holds(findings: tuple[Finding, ...], state: str) -> None:
    assert state_of_kit(findings) == state


def test_a_thing_to_know_that_is_not_settled_is_said_beside_the_verdict() -> None:
    assert also_open((finding("open", "cantTell", "C"),)) == (
        "1 more thing to know isn't settled; it can't stop the fit."
    )


def test_the_deciding_finding_is_the_worst_that_can_stop_a_fit() -> None:
    assert deciding((CARES, OPEN, STOPS, FITS)) is STOPS
    assert deciding((finding("open", "cantTell", "C"), FITS)) is None


@every_bike
def test_every_bike_gets_a_verdict_with_all_rules_behind_it(name: str) -> None:
    report = report_on(name)
    best = report.combinations[0]

    assert len(best.findings) == len(checker().rules)
    assert report.state == best.state == state_of_kit(best.findings)
    assert report.passed + report.cant_tell + report.failed == checker().combinations.size
    assert len(report.kits) == len(checker().combinations.hubs)
    assert 0 < report.settled <= report.total <= len(best.findings)


@every_bike
def test_combinations_come_fits_first(name: str) -> None:
    order = {"passed": 0, "cantTell": 1, "failed": 2}

    places = [order[each.outcome] for each in report_on(name).combinations]

    assert places == sorted(places)


@every_bike
def test_the_same_answers_give_the_same_report(name: str) -> None:
    assert checker().report(bike(name)) == report_on(name)


@every_bike
def test_parts_and_jobs_are_listed_unless_the_kit_is_ruled_out(name: str) -> None:
    report = report_on(name)
    kinds = {line.kind for line in report.parts_to_pull}

    if report.state == "no":
        assert not report.parts_to_pull
        assert not report.jobs
    else:
        assert {"hub", "axle_set", "torque_arm", "freehub", "controller", "pack", "sensor"} <= kinds
        assert [job for job in report.jobs if "torque arm" in job.text]


@every_bike
def test_every_failure_says_what_would_make_it_fit(name: str) -> None:
    for shown in report_on(name).combinations:
        for each in shown.findings:
            assert bool(each.remedy) is (each.state in ("no", "care")), each.rule_id


def test_the_demo_bikes_come_out_in_every_way() -> None:
    assert {report_on(name).state for name in BIKES} >= {"fit", "care", "open", "no"}


def test_many_rules_decide_the_demo_bikes() -> None:
    worst = {deciding(report_on(name).combinations[0].findings) for name in BIKES}

    assert len({each.rule_id for each in worst if each is not None}) >= 8


def standing(*findings: Finding) -> tuple[CombinationReport, ...]:
    return (CombinationReport(1, "", "open", "", "cantTell", False, {}, {}, 1, findings),)  # noqa: FBT003


def test_the_fact_that_settles_most_for_its_effort_is_asked_first() -> None:
    one = finding("open", "cantTell", rule_id="a", open_facts=("slot_width_mm",))
    other = finding("open", "cantTell", rule_id="b", open_facts=("slot_width_mm", "dropout_width_mm"))

    asks = ask_next(standing(one, other), Answers())

    assert [ask.fact for ask in asks] == ["slot_width_mm", "dropout_width_mm"]
    assert (asks[0].settles, asks[0].open_checks) == (2, 2)


def test_what_can_stop_a_fit_is_asked_before_what_is_only_to_know() -> None:
    cheap = finding("open", "cantTell", "C", rule_id="a", open_facts=("region",))
    dear = finding("open", "cantTell", rule_id="b", open_facts=("caliper_nearest_mm",))

    assert ask_next(standing(cheap, dear), Answers())[0].fact == "caliper_nearest_mm"


def test_nothing_is_asked_for_kits_that_are_ruled_out() -> None:
    ruled_out = CombinationReport(1, "", "no", "", "failed", False, {}, {}, 1, (STOPS, OPEN))  # noqa: FBT003

    assert ask_next((ruled_out,), Answers()) == ()


def test_one_more_answer_asked_for_settles_what_it_promised() -> None:
    answers = bike("steel-touring-135-qr").without("dropout_width_mm")
    report = checker().report(answers)

    first = report.ask_next[0]
    after = checker().report(answers.with_(bike("steel-touring-135-qr")[first.fact]))

    assert first.fact == "dropout_width_mm"
    assert (report.state, after.state) == ("open", "fit")


def test_another_cassette_is_the_nearest_change_where_no_body_takes_the_old_one() -> None:
    answers = bike("steel-touring-135-qr").with_(
        choice("cassette_interface", {"hg"}), number("cassette_speeds", Span.exactly(13))
    )

    report = checker().report(answers)

    assert report.state == "no"
    assert any("cassette" in change for nearest in report.nearest_fit for change in nearest.changes)


def test_a_rim_is_pulled_where_the_bikes_own_has_other_holes() -> None:
    answers = bike("steel-touring-135-qr").with_(number("rim_holes", Span.exactly(32)))

    lines = [line for line in checker().report(answers).parts_to_pull if line.kind == "rim"]

    assert [line.note for line in lines] == ["The bike's own rim has another number of holes."]
