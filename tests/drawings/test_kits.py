"""Drawings of the demo bikes with their best kits say what the findings say, and are as long as that."""

from __future__ import annotations

from functools import cache
from itertools import combinations

import pytest

from app.drawings.of_kit import AXLE, EXPLAINS, drawing_of
from app.drawings.side_parts import BEST_PLACE
from app.drawings.subject import Subject, subject_of
from app.drawings.svg import Drawing
from app.facts.bike import Bike
from app.facts.fact import NumberFact
from app.facts.span import THOUSAND, Span
from app.facts.table import FACTS
from app.report.numbers import span_text
from app.rules.register import REGISTER
from app.rules.torque_arm.best_place import best_place
from tests.demo import demo_catalogue, demo_standards
from tests.drawings.read_back import ReadBack, length, numbers_in, place_of, read_back
from tests.report.bikes import BIKES, bike, report_on

A_ROUNDING = 0.03


def subjects(name: str) -> list[Subject]:
    """A demo bike with each of its three best kits."""
    found = [
        subject_of(each, bike(name), demo_catalogue(), demo_standards())
        for each in report_on(name).combinations[:3]
    ]
    return [each for each in found if each is not None]


@cache
def views(view: str) -> dict[str, tuple[Subject, Drawing]]:
    """One view of every demo bike, with its three best kits."""
    return {
        f"{name} {number}": (subject, drawn)
        for name in BIKES
        for number, subject in enumerate(subjects(name))
        if (drawn := drawing_of(subject, view)) is not None
    }


def dimensions(drawn: ReadBack) -> list[tuple[str, float, str]]:
    """Of each dimension the rule, the length of its line in mm, and its number."""
    found = []
    for group in drawn.of_class("drawing__dimension"):
        inside = ReadBack(group)
        (line,) = inside.of_class("drawing__measured")
        text = "".join(each.text or "" for each in inside.words())
        found.append((group.attrib["data-rule"], length(line) / scale_of(drawn, group), text))
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


@pytest.mark.parametrize("view", EXPLAINS)
def test_every_dimension_is_the_number_of_its_finding(view: str) -> None:
    seen = 0
    for name, (subject, drawing) in views(view).items():
        for rule_id, long, text in dimensions(read_back(drawing)):
            low, high, said = told(subject, rule_id)
            assert text == said, name
            shortest, longest = low / THOUSAND - A_ROUNDING, high / THOUSAND + A_ROUNDING
            # An overlap is below zero, and its line is as long as it is wide.
            assert shortest <= long <= longest or shortest <= -long <= longest, (name, rule_id)
            seen += 1
    assert seen >= 20


@pytest.mark.parametrize("view", EXPLAINS)
def test_the_description_names_every_number_that_is_drawn(view: str) -> None:
    for name, (_, drawing) in views(view).items():
        drawn = read_back(drawing)
        told = numbers_in(drawn.text("desc"))
        for _, _, text in dimensions(drawn):
            assert set(numbers_in(text)) <= set(told), name


@pytest.mark.parametrize("view", EXPLAINS)
def test_all_words_are_on_the_paper_and_clear_of_each_other(view: str) -> None:
    for name, (_, drawing) in views(view).items():
        drawn = read_back(drawing)
        width, height = drawn.size
        places = [(str(each.text), place_of(each)) for each in drawn.words()]
        for text, (left, right, base) in places:
            assert left >= 0, (name, text)
            assert right <= width, (name, text)
            assert base <= height, (name, text)
        for (one, a), (other, b) in combinations(places, 2):
            assert abs(a[2] - b[2]) >= 12 or a[1] <= b[0] or b[1] <= a[0], (name, one, other)


@pytest.mark.parametrize("view", EXPLAINS)
def test_a_view_is_a_few_kilobytes(view: str) -> None:
    sizes = {name: len(drawing.inline().encode()) for name, (_, drawing) in views(view).items()}

    assert max(sizes.values()) <= 9_000, max(sizes, key=lambda name: sizes[name])


def test_the_hub_stands_between_its_dropouts_in_every_section() -> None:
    for name, (subject, drawing) in views(AXLE).items():
        hub = subject.axle_set.over_locknut_mm
        assert drawing.scale * (hub.high / THOUSAND) < 272, name


def test_every_rule_that_a_view_explains_is_in_the_rule_book() -> None:
    rules = {rule.id for rule in REGISTER}

    assert {rule_id for seen in EXPLAINS.values() for rule_id in seen} <= rules
