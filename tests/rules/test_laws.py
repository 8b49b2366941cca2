"""What must hold for every rule, every bike and every part."""

from __future__ import annotations

from functools import cache

import pytest
from hypothesis import given
from hypothesis import strategies as st

from app.catalogue.part import Part
from app.facts.answers import Answers
from app.facts.bike import Bike, UndeclaredFactError
from app.facts.fact import ChoiceFact
from app.facts.span import Span
from app.facts.table import FACTS
from app.rules.evaluate import Bench
from app.rules.outcome import Outcome
from app.rules.register import REGISTER
from app.rules.rule import Rule
from tests.demo import demo_catalogue, demo_standards, parts_of_kind
from tests.rules.strategies import bikes, closer

# What a closer reading may turn an outcome into; a choice that narrows may also end in inapplicable.
SETTLES = {
    Outcome.INAPPLICABLE: {Outcome.INAPPLICABLE},
    Outcome.PASSED: {Outcome.PASSED},
    Outcome.FAILED: {Outcome.FAILED},
    Outcome.CANT_TELL: {Outcome.PASSED, Outcome.FAILED, Outcome.CANT_TELL},
}
every_rule = pytest.mark.parametrize("rule", REGISTER, ids=lambda rule: rule.id)


@cache
def some_parts(rule: Rule) -> st.SearchStrategy[tuple[Part, ...]]:
    """Any parts of the demo catalogue, whether or not they go together: a rule must bear that too."""
    return st.tuples(*[st.sampled_from(parts_of_kind(kind)) for kind in rule.part_kinds])


def outcome(rule: Rule, answers: Answers, parts: tuple[Part, ...]) -> Outcome:
    return Bench(rule, answers, demo_catalogue(), demo_standards()).result(parts).outcome


@every_rule
@given(data=st.data())
def test_a_closer_reading_never_turns_one_verdict_into_the_other(rule: Rule, data: st.DataObject) -> None:
    answers = data.draw(bikes(rule.settled_by))
    narrower = data.draw(closer(answers, rule.settled_by))
    parts = data.draw(some_parts(rule))

    before, after = outcome(rule, answers, parts), outcome(rule, narrower, parts)

    choices = [name for name in rule.settled_by if isinstance(FACTS[name], ChoiceFact)]
    a_choice_narrowed = any(answers.words(name) != narrower.words(name) for name in choices)
    allowed = SETTLES[before] | ({Outcome.INAPPLICABLE} if a_choice_narrowed else set())
    assert after in allowed


@every_rule
@given(data=st.data())
def test_a_fact_that_a_rule_does_not_name_never_moves_it(rule: Rule, data: st.DataObject) -> None:
    others = tuple(name for name in FACTS if name not in rule.settled_by)
    answers = data.draw(bikes(rule.settled_by))
    more = data.draw(bikes(tuple(data.draw(st.permutations(others))[:6])))
    parts = data.draw(some_parts(rule))

    assert outcome(rule, answers, parts) is outcome(rule, answers.with_(*more.values()), parts)


def test_a_rule_that_reads_a_fact_it_does_not_name_is_caught() -> None:
    view = Bike({"slot_width_mm": Span(10_000, 10_000)}, frozenset())

    with pytest.raises(UndeclaredFactError, match="dropout_width_mm"):
        view.dropout_width_mm  # noqa: B018 - reading it is the point


@every_rule
def test_a_rule_names_at_most_three_choices_that_may_be_any_word_when_unanswered(rule: Rule) -> None:
    facts = [FACTS[name] for name in rule.settled_by]

    assert sum(isinstance(fact, ChoiceFact) and fact.unanswered is None for fact in facts) <= 3


def test_every_fact_settles_some_rule_but_those_that_wait_for_the_drive() -> None:
    named = {name for rule in REGISTER for name in rule.settled_by}

    assert set(FACTS) - named == WAITING


# Facts that are asked for already, because builds are kept, and that the later sums will read.
WAITING = {
    "altitude_m",
    "ambient_c",
    "climb_minutes",
    "controller_present",
    "cruise_kmh",
    "headwind_ms",
    "largest_chainring",
    "own_controller_battery_a",
    "own_controller_limit_v",
    "own_controller_plug",
    "own_pack_continuous_a",
    "own_pack_full_v",
    "own_pack_nominal_v",
    "pack_present",
    "posture",
    "range_km",
    "rider_power_w",
    "rim_erd_mm",
    "steepest_grade_pct",
    "surface",
}
