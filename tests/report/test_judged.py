"""Judging classes of combinations at once gives what judging each of them alone gives."""

from __future__ import annotations

import random

import pytest

from app.catalogue.standards import Standards
from app.facts.answers import Answers
from app.report.build import Checker
from app.report.report import report_from_json, report_to_json
from app.rules.evaluate import Bench
from app.rules.rule import Rule
from tests.bench.catalogues import Counts, generated
from tests.demo import demo_catalogue, demo_standards
from tests.report.bikes import BIKES, bike, checker, report_on
from tests.report.naive import every_combination, judge_one

FEW = Counts(hubs=2, axle_sets=3, arms=1, freehubs=2, windings=1, controllers=2, packs=2, sensors=2)
every_bike = pytest.mark.parametrize("name", BIKES)
# What the ten best and the counts rest on is compared for every combination of a small catalogue.
SOME = 12


@every_bike
def test_the_counts_are_those_of_judging_every_combination_alone(name: str) -> None:
    few = Checker.of(generated(FEW), demo_standards())

    plain = [judge_one(few, bike(name), parts).severity for parts in every_combination(few)]
    report = few.report(bike(name))

    assert len(plain) == FEW.combinations
    assert (report.passed, report.cant_tell, report.failed) == tuple(plain.count(each) for each in (0, 1, 2))


@every_bike
def test_no_combination_is_better_than_the_first_that_is_shown(name: str) -> None:
    every = list(every_combination(checker()))
    chosen = random.Random(name).sample(every, SOME)  # noqa: S311 - a draw for a test
    best = report_on(name).combinations[0]

    severity = {"passed": 0, "cantTell": 1, "failed": 2}[best.outcome]

    assert all(judge_one(checker(), bike(name), parts).severity >= severity for parts in chosen)


@every_bike
def test_what_is_folded_has_the_same_outcomes_throughout(name: str) -> None:
    by_key = {"+".join(part.id for part in parts): parts for parts in every_combination(checker())}

    for shown in report_on(name).combinations[:3]:
        first = judge_one(checker(), bike(name), by_key[shown.key])
        assert [outcome.earl for outcome, _ in first.outcomes] == [each.outcome for each in shown.findings]
        for kind, others in shown.also.items():
            if kind in ("controller", "pack", "sensor", "winding", "freehub") and len(shown.also) == 1:
                key = shown.key.replace(shown.parts[kind].id, others[0].id)
                assert judge_one(checker(), bike(name), by_key[key]).outcomes == first.outcomes


def test_a_rule_runs_once_for_each_set_of_the_parts_it_reads(monkeypatch: pytest.MonkeyPatch) -> None:
    asked: list[tuple[str, ...]] = []
    answer = Bench._ask  # noqa: SLF001 - counting what is really asked needs the inside

    def counting(self: Bench, parts, tried):  # type: ignore[no-untyped-def]  # noqa: ANN001, ANN202
        if not tried:
            asked.append((self.rule.id, *[part.id for part in parts]))
        return answer(self, parts, tried)

    monkeypatch.setattr(Bench, "_ask", counting)
    checker().report(bike("steel-touring-135-qr"))

    assert len(asked) == len(set(asked))
    assert len(asked) < checker().combinations.size / 10


def test_a_report_is_kept_as_plain_data_without_loss() -> None:
    report = report_on("gravel-142-flat-mount")

    assert report_from_json(report_to_json(report)) == report


def test_a_catalogue_without_a_hub_gives_a_report_that_says_so() -> None:
    empty = Checker.of(generated(Counts(0, 0, 0, 0, 0, 0, 0, 0)), demo_standards())

    report = empty.report(Answers())

    assert (report.combinations, report.sentence) == ((), "This catalogue has no kit yet.")


def test_the_rules_revision_changes_with_the_tables_that_rules_decide_by() -> None:
    standards = demo_standards()
    fewer = Standards(**{**vars(standards), "rotor_sizes": standards.rotor_sizes[1:]})
    rules: tuple[Rule, ...] = checker().rules

    assert Checker.of(demo_catalogue(), fewer, rules).rules_revision != checker().rules_revision
