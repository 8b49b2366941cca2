"""What was asked of one bike is not asked again while a rule sees the same."""

from __future__ import annotations

from functools import cache

import pytest

from app.facts.answers import Answers, number
from app.facts.span import Span
from app.report.build import Checker
from app.rules.evaluate import Bench
from app.rules.register import REGISTER
from app.rules.shelf import KEPT, Shelf
from tests.demo import demo_catalogue, demo_standards
from tests.report.bikes import BIKES, bike


def slot(width_mm: str) -> Answers:
    return bike("steel-touring-135-qr").with_(number("slot_width_mm", Span.exactly(width_mm)))


def asked_for(checker: Checker, answers: Answers, monkeypatch: pytest.MonkeyPatch) -> set[str]:
    """The rules that were really asked for this report."""
    asked: set[str] = set()
    ask = Bench._ask  # noqa: SLF001 - counting what is really asked needs the inside

    def noting(self: Bench, parts, tried):  # type: ignore[no-untyped-def]  # noqa: ANN001, ANN202
        asked.add(self.rule.id)
        return ask(self, parts, tried)

    with monkeypatch.context() as patch:
        patch.setattr(Bench, "_ask", noting)
        checker.report(answers)
    return asked


def test_one_changed_answer_asks_only_the_rules_that_name_it(monkeypatch: pytest.MonkeyPatch) -> None:
    checker = Checker.of(demo_catalogue(), demo_standards())
    checker.report(slot("10.2"))

    asked = asked_for(checker, slot("10.3"), monkeypatch)

    assert asked == {rule.id for rule in REGISTER if "slot_width_mm" in rule.settled_by}


def test_the_same_bike_again_asks_nothing(monkeypatch: pytest.MonkeyPatch) -> None:
    checker = Checker.of(demo_catalogue(), demo_standards())
    checker.report(slot("10.2"))

    assert asked_for(checker, slot("10.2"), monkeypatch) == set()


@cache
def used() -> Checker:
    """A checker that has seen all bikes."""
    checker = Checker.of(demo_catalogue(), demo_standards())
    for name in BIKES:
        checker.report(bike(name))
    return checker


@pytest.mark.parametrize("name", BIKES)
def test_what_was_kept_of_other_bikes_never_shows(name: str) -> None:
    assert used().report(bike(name)) == Checker.of(demo_catalogue(), demo_standards()).report(bike(name))


def test_only_so_many_bikes_are_kept() -> None:
    shelf = Shelf(REGISTER, demo_catalogue(), demo_standards())
    at = next(place for place, rule in enumerate(REGISTER) if rule.id == "slot_width")

    first = shelf.benches(slot("10.000"))[at]
    for thousandth in range(1, KEPT + 1):
        shelf.benches(slot(f"10.{thousandth:03}"))

    assert shelf.benches(slot("10.000"))[at] is not first
    assert shelf.benches(slot(f"10.{KEPT:03}"))[at] is shelf.benches(slot(f"10.{KEPT:03}"))[at]
