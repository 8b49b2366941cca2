"""What a drawing dimensions, read back from it, and what the rules say that it is."""

from __future__ import annotations

from app.drawings.side_parts import BEST_PLACE
from app.drawings.subject import Subject
from app.facts.bike import Bike
from app.facts.fact import NumberFact
from app.facts.span import THOUSAND, Span
from app.facts.table import FACTS
from app.report.numbers import span_text
from app.rules.torque_arm.best_place import best_place
from tests.drawings.read_back import ReadBack, length

A_ROUNDING = 0.03


def faults_of(subject: Subject, drawn: ReadBack) -> list[str]:
    """Every number that isn't what the rules say, and every line that is not as long as its number."""
    faults = []
    for rule_id, long, text in dimensions(drawn):
        low, high, said = told(subject, rule_id)
        if not text.endswith(said):
            faults.append(f"{rule_id} says {said}, and the drawing {text}")
        shortest, longest = low / THOUSAND - A_ROUNDING, high / THOUSAND + A_ROUNDING
        # An overlap is below zero, and its line is as long as it is wide.
        if long is not None and not (shortest <= long <= longest or shortest <= -long <= longest):
            faults.append(f"{rule_id} says {said}, and its line is {long:.2f} mm long")
    return faults


def dimensions(drawn: ReadBack) -> list[tuple[str, float | None, str]]:
    """Of each number the rule, the length of its line in mm if it has one, and its text."""
    found: list[tuple[str, float | None, str]] = []
    for group in drawn.root.iter():
        if "data-rule" in group.attrib:
            inside = ReadBack(group)
            lines = inside.of_class("drawing__measured")
            text = "".join(each.text or "" for each in inside.words())
            long = length(lines[0]) / scale_of(drawn, group) if lines else None
            found.append((group.attrib["data-rule"], long, text))
    return found


def told(subject: Subject, rule_id: str) -> tuple[int, int, str]:
    """Both ends of a number in thousandths, and its text: as a finding says it, or the best place."""
    if rule_id == BEST_PLACE:
        gap = gap_in_best_place(subject)
        return gap.low, gap.high, span_text(gap, "mm")
    finding = subject.findings[rule_id]
    assert finding.measured
    low, high = finding.measured.reading
    text = span_text(Span(low, high), finding.unit, finding.measured.places)
    assert text in finding.sentence
    return low, high, text


def gap_in_best_place(subject: Subject) -> Span:
    """How far the arm is from the caliper where it is best clamped, as the rules find it."""
    answers, arm = subject.answers, subject.torque_arm
    numbers = {name: answers.span(name) for name, fact in FACTS.items() if isinstance(fact, NumberFact)}
    words = {name: min(answers.words(name)) for name in FACTS if name not in numbers}
    place = best_place(Bike({**numbers, **words}, frozenset()), arm, subject.standards)
    assert place
    return dict(place.margins_mm)["caliper"] + (arm.clearance_mm or Span(0, 0))


def scale_of(drawn: ReadBack, group: object) -> float:
    """Units to a millimetre where a dimension stands: its detail's, or the drawing's."""
    for detail in drawn.of_class("drawing__detail"):
        if group in list(detail):
            return float(detail.attrib["data-scale"])
    return drawn.scale
