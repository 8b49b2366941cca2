"""Drawings of the demo bikes with their best kits say what the findings say, and are as long as that."""

from __future__ import annotations

from functools import cache
from itertools import combinations

import pytest

from app.drawings.of_kit import AXLE, EXPLAINS, drawing_of
from app.drawings.subject import Subject, subject_of
from app.drawings.svg import Drawing
from app.facts.span import THOUSAND
from app.rules.register import REGISTER
from tests.demo import demo_catalogue, demo_standards
from tests.drawings.dimensions import dimensions, faults_of
from tests.drawings.read_back import numbers_in, place_of, read_back
from tests.report.bikes import BIKES, bike, report_on


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


@pytest.mark.parametrize("view", EXPLAINS)
def test_every_dimension_is_the_number_of_its_finding(view: str) -> None:
    drawn = {name: (subject, read_back(drawing)) for name, (subject, drawing) in views(view).items()}

    assert sum(len(dimensions(each)) for _, each in drawn.values()) >= 20
    for name, (subject, each) in drawn.items():
        assert faults_of(subject, each) == [], name


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
