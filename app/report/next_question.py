"""Which fact to measure next: what settles most open checks of the kits still standing, for its effort."""

from __future__ import annotations

from collections.abc import Sequence

from app.facts.answers import Answers
from app.facts.fact import NumberFact
from app.facts.table import FACTS
from app.report.numbers import places_needed, shown
from app.report.report import Ask, CombinationReport, Finding

USE = "Use {tool} (± {by})."
MOST = 5
# A check that can't stop a fit counts, but never before one that can.
CAUTION_SHARE = 0.01


def _unsettled(combinations: Sequence[CombinationReport]) -> list[Finding]:
    """Open findings of the kits that are still standing; where one fits already, of the best alone."""
    standing = [each for each in combinations if each.outcome != "failed"]
    if standing and standing[0].outcome == "passed":
        standing = standing[:1]
    found = {
        (finding.rule_id, finding.open_facts): finding
        for combination in standing
        for finding in combination.findings
        if finding.outcome == "cantTell"
    }
    return list(found.values())


def _worth(name: str, findings: Sequence[Finding]) -> float:
    """Checks settled, each shared among the facts it lacks, for a second of effort."""
    shares = (
        (1.0 if finding.weight == "B" else CAUTION_SHARE) / len(finding.open_facts)
        for finding in findings
        if name in finding.open_facts
    )
    return sum(shares) / FACTS[name].effort_s


def _ask(name: str, findings: Sequence[Finding], answers: Answers) -> Ask:
    fact = FACTS[name]
    settles = len({finding.rule_id for finding in findings if name in finding.open_facts})
    open_checks = len({finding.rule_id for finding in findings})
    if not isinstance(fact, NumberFact):
        return Ask(name, fact.label, "", settles, open_checks, fact.effort_s, fact.how_measured)
    tool = fact.tools[0]
    by = shown(tool.plus_minus, places_needed(tool.plus_minus, fact.decimals))
    advice = USE.format(tool=tool.name, by=by) if answers.is_known(name) else fact.how_measured
    return Ask(name, fact.label, tool.name, settles, open_checks, fact.effort_s, advice)


def ask_next(combinations: Sequence[CombinationReport], answers: Answers) -> tuple[Ask, ...]:
    """The facts that would settle most, best first; ties go by the table's order."""
    findings = _unsettled(combinations)
    lacking = {name for finding in findings for name in finding.open_facts}
    ordered = sorted((name for name in FACTS if name in lacking), key=lambda name: -_worth(name, findings))
    return tuple(_ask(name, findings, answers) for name in ordered[:MOST])
