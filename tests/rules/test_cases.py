"""Every worked case of the rule book comes out as it says, and no rule lacks one."""

from __future__ import annotations

from functools import cache
from pathlib import Path

import pytest

from app.report.wording import numbers_of, remedy_of, sentence_of, state_of
from app.rules.cases import Case, read_cases, read_plain_parts
from app.rules.check import Check
from app.rules.evaluate import Bench
from app.rules.outcome import Outcome, Result
from app.rules.register import BY_ID, REGISTER
from app.rules.rule import Rule
from tests.demo import SEED_DATA, demo_standards

CASES = SEED_DATA / "cases"


@cache
def plain_parts() -> dict[str, dict[str, object]]:
    return read_plain_parts((CASES / "plain_parts.yaml").read_text("utf-8"))


@cache
def cases_of(rule: Rule) -> tuple[Case, ...]:
    path = CASES / f"{rule.id}.yaml"
    return read_cases(rule, path.read_text("utf-8"), plain_parts()) if path.exists() else ()


def result_of(rule: Rule, case: Case) -> Result:
    return Bench(rule, case.answers, case.stock, demo_standards()).result(case.parts)


ALL = [
    pytest.param(rule, case, id=f"{rule.id}: {case.title}") for rule in REGISTER for case in cases_of(rule)
]
every_rule = pytest.mark.parametrize("rule", REGISTER, ids=lambda rule: rule.id)


@pytest.mark.parametrize(("rule", "case"), ALL)
def test_a_case_comes_out_as_the_rule_book_says(rule: Rule, case: Case) -> None:
    result = result_of(rule, case)

    assert result.outcome is case.outcome
    assert case.weight is None or result.weight is case.weight


@every_rule
def test_every_rule_shows_each_outcome(rule: Rule) -> None:
    assert {case.outcome for case in cases_of(rule)} == set(Outcome)


@every_rule
def test_a_rule_with_numbers_shows_its_limit(rule: Rule) -> None:
    results = [(case, result_of(rule, case)) for case in cases_of(rule)]
    with_numbers = [
        case for case, result in results if isinstance(result.given, Check) and result.given.reading
    ]
    on_the_limit = [result.given for case, result in results if case.on_the_limit]

    assert bool(on_the_limit) is bool(with_numbers)
    for given in on_the_limit:
        assert isinstance(given, Check)
        assert given.reading is not None
        ends = {limit.value.low for limit in (given.low, given.high) if limit} | {
            limit.value.high for limit in (given.low, given.high) if limit
        }
        assert {given.reading.low, given.reading.high} & ends


@pytest.mark.parametrize(("rule", "case"), ALL)
def test_every_sentence_of_a_rule_can_be_said(rule: Rule, case: Case) -> None:
    result = result_of(rule, case)

    sentence = sentence_of(rule, result, state_of(result, ()))

    assert sentence.endswith(".")
    assert "{" not in sentence + remedy_of(rule, result)
    if isinstance(result.given, Check):
        for template in (rule.says.passed, rule.says.failed, rule.says.failed_high, rule.says.remedy):
            template.format_map(numbers_of(result))


def test_every_file_of_cases_belongs_to_a_rule() -> None:
    files = {path.stem for path in Path(CASES).glob("*.yaml")} - {"plain_parts"}

    assert files <= set(BY_ID)
