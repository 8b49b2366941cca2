"""What a drawing is of: a bike as far as it is known, the parts of one kit, and what was found of both."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from app.catalogue.catalogue import Catalogue
from app.catalogue.hub_parts import AxleSet, Freehub, Hub, TorqueArm
from app.catalogue.part import Part
from app.catalogue.standards import Standards
from app.facts.answers import Answers
from app.facts.span import THOUSAND, Span
from app.report.numbers import span_text
from app.report.report import CombinationReport, Finding, Measured

HALF = 2 * THOUSAND


@dataclass(frozen=True, slots=True)
class Reading:
    """The reading of a finding: its ends in mm, and as the finding says it."""

    rule_id: str
    low: float
    high: float
    text: str

    @property
    def middle(self) -> float:
        """Half way between its ends."""
        return (self.low + self.high) / 2


@dataclass(frozen=True, slots=True)
class Subject:
    """One bike with one kit."""

    answers: Answers
    hub: Hub
    axle_set: AxleSet
    torque_arm: TorqueArm
    freehub: Freehub
    findings: Mapping[str, Finding]
    standards: Standards

    def span(self, name: str) -> Span | None:
        """The reading of a number; None where nobody gave one."""
        return self.answers.span(name) if self.answers.is_known(name) else None

    def middle(self, name: str, otherwise: float) -> float:
        """The middle of a reading, or what is usual where it isn't known."""
        span = self.span(name)
        return otherwise if span is None else middle_of(span)

    def word(self, name: str) -> str:
        """The word of a choice; empty while several are possible."""
        words = self.answers.words(name)
        return next(iter(words)) if len(words) == 1 else ""

    def reading(self, rule_id: str) -> Reading | None:
        """What a rule read; None where it read nothing, or not enough to say so."""
        finding = self.findings.get(rule_id)
        if finding is None or finding.measured is None:
            return None
        return _reading(finding, finding.measured)


def middle_of(span: Span) -> float:
    """The middle of a span, in its unit."""
    return (span.low + span.high) / HALF


def _reading(finding: Finding, measured: Measured) -> Reading:
    low, high = measured.reading
    text = span_text(Span(low, high), finding.unit, measured.places)
    return Reading(finding.rule_id, low / THOUSAND, high / THOUSAND, text)


def subject_of(
    combination: CombinationReport, answers: Answers, catalogue: Catalogue, standards: Standards
) -> Subject | None:
    """The kit of a report on a bike; None where the catalogue no longer has one of its parts."""
    parts = {kind: _part(combination, catalogue, kind, plural) for kind, plural in _DRAWN.items()}
    hub, axle_set, arm, freehub = parts.values()
    if not (
        isinstance(hub, Hub)
        and isinstance(axle_set, AxleSet)
        and isinstance(arm, TorqueArm)
        and isinstance(freehub, Freehub)
    ):
        return None
    findings = {each.rule_id: each for each in combination.findings}
    return Subject(answers, hub, axle_set, arm, freehub, findings, standards)


_DRAWN = {"hub": "hubs", "axle_set": "axle_sets", "torque_arm": "torque_arms", "freehub": "freehubs"}


def _part(combination: CombinationReport, catalogue: Catalogue, kind: str, plural: str) -> Part | None:
    named = combination.parts.get(kind)
    return next((part for part in catalogue.parts(plural) if named and part.id == named.id), None)
