"""A paper gauge that was held on the bike answers for its own parts, in place of what was measured."""

from __future__ import annotations

import pytest

from app.drawings.paper_gauge import find_gauge
from app.facts.answers import Answer, Answers, choice
from app.facts.form_reader import read_form
from app.rules.evaluate import Bench
from app.rules.outcome import Outcome
from app.rules.register import REGISTER
from app.rules.rule import Rule
from app.rules.shelf import what_it_sees
from tests.demo import demo_catalogue, demo_standards

RULES = {rule.id: rule for rule in REGISTER}
DISC = Answers().with_(choice("rear_brake", ["disc"]), choice("dropout_kind", ["thru_axle"]))
MEASURED = ("arm_caliper", "arm_caliper_far", "arm_caliper_wanted")


def name_of(arm: str, axle_set: str) -> str:
    gauge = find_gauge(demo_catalogue(), arm, axle_set)
    assert gauge is not None
    return gauge.name


LONG = name_of("arm-long", "weir-142-thru")


def held(fact: str, word: str, gauge: str = LONG) -> Answers:
    return DISC.with_(Answer(fact, word, gauge, words=frozenset({word})))


def outcome(rule: Rule, answers: Answers, arm: str = "arm-long", axle_set: str = "weir-142-thru") -> Outcome:
    gauge = find_gauge(demo_catalogue(), arm, axle_set)
    assert gauge is not None
    parts = {"torque_arm": gauge.arm, "hub": gauge.hub, "axle_set": gauge.axle_set}
    bench = Bench(rule, answers, demo_catalogue(), demo_standards())
    return bench.result(tuple(parts[kind] for kind in rule.part_kinds)).outcome


@pytest.mark.parametrize(("word", "expected"), [("yes", Outcome.PASSED), ("touches", Outcome.FAILED)])
@pytest.mark.parametrize(
    ("fact", "rule", "measured"),
    [
        ("gauge_arm_clears", "gauge_arm", MEASURED),
        ("gauge_shell_clears", "gauge_shell", ("shell_caliper", "shell_caliper_wanted")),
        ("gauge_clamp_reaches", "gauge_clamp", ("arm_reach",)),
    ],
)
def test_what_the_gauge_told_stands_in_place_of_what_was_not_measured(
    fact: str, rule: str, measured: tuple[str, ...], word: str, expected: Outcome
) -> None:
    assert outcome(RULES[rule], held(fact, word)) is expected
    for each in measured:
        assert outcome(RULES[each], DISC) is Outcome.CANT_TELL
        assert outcome(RULES[each], held(fact, word)) is Outcome.INAPPLICABLE


@pytest.mark.parametrize(
    "gauge", ["", "arm-long.0000 weir-142-thru.0000", name_of("arm-short", "weir-142-thru")]
)
def test_a_gauge_of_other_parts_or_of_an_older_print_tells_nothing(gauge: str) -> None:
    answers = held("gauge_arm_clears", "touches", gauge)

    assert outcome(RULES["gauge_arm"], answers) is Outcome.INAPPLICABLE
    assert outcome(RULES["arm_caliper"], answers) is Outcome.CANT_TELL


@pytest.mark.parametrize("answers", [DISC, held("gauge_arm_clears", "unsure")])
def test_a_gauge_that_told_nothing_changes_nothing(answers: Answers) -> None:
    assert outcome(RULES["gauge_arm"], answers) is Outcome.INAPPLICABLE
    assert outcome(RULES["arm_caliper"], answers) is Outcome.CANT_TELL


def test_a_gauge_serves_every_axle_set_of_its_arm_but_only_its_own_shell() -> None:
    arm, shell = held("gauge_arm_clears", "yes"), held("gauge_shell_clears", "yes")

    assert outcome(RULES["gauge_arm"], arm, axle_set="weir-148-thru") is Outcome.PASSED
    assert outcome(RULES["gauge_shell"], shell, axle_set="weir-148-thru") is Outcome.INAPPLICABLE


def test_arm_and_clamp_have_to_be_seen_on_one_gauge_to_settle_both_at_once() -> None:
    rule = RULES["arm_reach_clear_of_caliper"]
    arm = held("gauge_arm_clears", "yes")
    clamp = held("gauge_clamp_reaches", "yes")["gauge_clamp_reaches"]

    assert outcome(rule, arm) is Outcome.CANT_TELL
    assert outcome(rule, arm.with_(clamp)) is Outcome.INAPPLICABLE


def test_an_answer_by_another_gauge_is_another_sight_of_the_bike() -> None:
    rule = RULES["gauge_arm"]

    assert what_it_sees(rule, held("gauge_arm_clears", "yes")) != what_it_sees(
        rule, held("gauge_arm_clears", "yes", "arm-long.0000")
    )


def test_an_unanswered_gauge_is_as_good_as_not_seen() -> None:
    not_known = read_form({"gauge_arm_clears": "?"}).answers

    assert Answers().words("gauge_arm_clears") == not_known.words("gauge_arm_clears") == {"unsure"}
    assert not not_known.is_known("gauge_arm_clears")
