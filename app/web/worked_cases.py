"""The worked cases of the rule book: each rule shown on invented bikes, one for every outcome."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import lru_cache
from pathlib import Path
from types import MappingProxyType
from typing import TypeAlias

from app.catalogue.standards import Standards
from app.facts.shown import what_we_read
from app.facts.table import FACTS
from app.report.findings import finding_of
from app.rules.cases import Case, read_cases, read_plain_parts
from app.rules.evaluate import Bench
from app.rules.outcome import Outcome
from app.rules.register import REGISTER
from app.rules.rule import Rule
from app.web.settings import PROJECT

CASES = PROJECT / "seed_data" / "cases"
PLAIN_PARTS = "plain_parts.yaml"
IN_ORDER = (Outcome.PASSED, Outcome.FAILED, Outcome.CANT_TELL, Outcome.INAPPLICABLE)
FACT = "{label}: {value}"

Cases: TypeAlias = Mapping[str, tuple[Case, ...]]


@dataclass(frozen=True, slots=True)
class WorkedCase:
    """One case as a page shows it. `facts` are those that the case is about, with their values."""

    title: str
    facts: tuple[str, ...]
    state: str
    words: str
    sentence: str
    remedy: str


@lru_cache(maxsize=2)
def read_all_cases(folder: Path = CASES) -> Cases:
    """The cases of every rule, by the rule's id. Kept, because a test run starts hundreds of shops."""
    plain = read_plain_parts((folder / PLAIN_PARTS).read_text(encoding="utf-8"))
    return MappingProxyType({rule.id: _cases(rule, folder / f"{rule.id}.yaml", plain) for rule in REGISTER})


def _cases(rule: Rule, path: Path, plain: Mapping[str, dict[str, object]]) -> tuple[Case, ...]:
    return read_cases(rule, path.read_text(encoding="utf-8"), plain)


def worked_cases(rule: Rule, cases: Cases, standards: Standards) -> tuple[WorkedCase, ...]:
    """The first case of each outcome: what fits, what doesn't, what can't be told, what it isn't about."""
    worked = [(case.outcome, _worked(rule, case, standards)) for case in cases[rule.id]]
    # Of those that can't be told, a reading across a limit shows most.
    worked.sort(key=lambda each: each[1].state != "close")
    return tuple(case for outcome in IN_ORDER for case in [each for of, each in worked if of is outcome][:1])


def _worked(rule: Rule, case: Case, standards: Standards) -> WorkedCase:
    bench = Bench(rule, case.answers, case.stock, standards)
    finding = finding_of(bench, case.answers, case.parts)
    facts = tuple(
        FACT.format(label=FACTS[name].label, value=what_we_read(FACTS[name], answer))
        for name, answer in case.answers.items()
    )
    return WorkedCase(case.title, facts, finding.state, finding.words, finding.sentence, finding.remedy)
