"""What each fact does to the verdict on the best kit: the worst finding that it has a part in."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from app.facts.answers import Answers
from app.facts.fact import ChoiceFact, NumberFact
from app.facts.table import FACTS
from app.report.report import Finding, Report

# Worst first. What can't be told ranks before what needs care: it may still stop the fit.
WORST_FIRST = ("no", "close", "open", "gap", "care", "fit", "skip")
WANTS_MORE = frozenset({"close", "open"})
SAYS_WHY = frozenset({"no", "close", "gap", "care"})
SEE = "See {letter}"


@dataclass(frozen=True, slots=True)
class Mark:
    """A gauge state, its words, and in one or two sentences why, where there is something to explain."""

    state: str = ""
    words: str = ""
    why: str = ""


UNMARKED = Mark()


def marks_of(report: Report | None, answers: Answers) -> Mapping[str, Mark]:
    """The mark of every fact that has one; none at all before anything is answered."""
    if report is None or report.best is None or not answers:
        return {}
    by_fact: dict[str, list[Finding]] = {}
    for finding in report.best.findings:
        for fact in _concerned(finding, answers):
            by_fact.setdefault(fact, []).append(finding)
    settled = {fact for each in report.best.findings if each.state != "skip" for fact in each.facts}
    return {
        fact: _mark(fact, found, answers)
        for fact, found in by_fact.items()
        if answers.is_known(fact) or fact not in settled or _wants_more(found)
    }


def _concerned(finding: Finding, answers: Answers) -> list[str]:
    """The facts that a finding tells something about.

    An open check is about the facts that it lacks, and a settled one about the known facts that settled it.
    What the maker owes is about the number that it would be held against.
    """
    if finding.state in WANTS_MORE:
        return [fact for fact in finding.facts if fact in finding.open_facts]
    if finding.state == "skip":
        return list(finding.facts)
    known = [fact for fact in finding.facts if answers.is_known(fact)]
    numbers = [fact for fact in known if isinstance(FACTS[fact], NumberFact)]
    return numbers if finding.state == "gap" and not _only_choices(finding) else known


def _only_choices(finding: Finding) -> bool:
    return all(isinstance(FACTS[fact], ChoiceFact) for fact in finding.facts)


def _wants_more(found: list[Finding]) -> bool:
    return any(finding.state in WANTS_MORE for finding in found)


def _mark(fact: str, found: list[Finding], answers: Answers) -> Mark:
    worst = min(found, key=lambda each: WORST_FIRST.index(each.state))
    return Mark(worst.state, worst.words, _why(worst, fact, answers))


def _why(finding: Finding, fact: str, answers: Answers) -> str:
    """The sentence stands at the first number that it is about; the other facts point there."""
    if finding.state not in SAYS_WHY:
        return ""
    concerned = _concerned(finding, answers)
    first = next((each for each in concerned if isinstance(FACTS[each], NumberFact)), concerned[0])
    if fact != first:
        return SEE.format(letter=FACTS[first].letter)
    leaning = f"{finding.leaning[0].upper()}{finding.leaning[1:]}. " if finding.leaning else ""
    return leaning + finding.sentence
