"""What differs between two reports on one bike: the verdict, the kit, and the findings that moved."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from app.facts.answers import Answers
from app.facts.table import FACTS
from app.report.report import Finding, Report


@dataclass(frozen=True, slots=True)
class Moved:
    """One rule whose finding differs; None on a side where the rule wasn't there."""

    rule_id: str
    title: str
    before: Finding | None
    after: Finding | None

    @property
    def changed_state(self) -> bool:
        """Whether its verdict differs, and not its sentence alone."""
        return _state(self.before) != _state(self.after)


@dataclass(frozen=True, slots=True)
class Changes:
    """What moved between two reports. `kit` tells whether other parts come out best."""

    verdict: bool
    kit: bool
    findings: tuple[Moved, ...]

    @property
    def any(self) -> bool:
        """Whether there is anything to show."""
        return self.verdict or self.kit or bool(self.findings)


def changes(before: Report, after: Report) -> Changes:
    """Compare the best combinations of two reports rule by rule; verdicts that differ come first."""
    old, new = _by_rule(before), _by_rule(after)
    moved = [
        Moved(rule_id, (new.get(rule_id) or old[rule_id]).title, old.get(rule_id), new.get(rule_id))
        for rule_id in {**new, **old}
        if _differ(old.get(rule_id), new.get(rule_id))
    ]
    moved.sort(key=lambda each: not each.changed_state)
    return Changes(
        verdict=(before.state, before.sentence) != (after.state, after.sentence),
        kit=_key(before) != _key(after),
        findings=tuple(moved),
    )


def changed_facts(before: Answers, after: Answers) -> tuple[str, ...]:
    """The facts that are answered otherwise, as typed or as read, in the order of the table."""
    return tuple(name for name in FACTS if before.get(name) != after.get(name))


def _by_rule(report: Report) -> Mapping[str, Finding]:
    return {finding.rule_id: finding for finding in report.best.findings} if report.best else {}


def _key(report: Report) -> str:
    return report.best.key if report.best else ""


def _state(finding: Finding | None) -> str:
    return "" if finding is None else finding.state


def _differ(before: Finding | None, after: Finding | None) -> bool:
    if before is None or after is None:
        return before is not after
    return (before.state, before.sentence, before.remedy) != (after.state, after.sentence, after.remedy)
