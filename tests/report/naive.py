"""The plainest way to judge: every rule for every combination, one by one. Slow, and so easy to believe."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import product

from app.catalogue.part import Part
from app.facts.answers import Answers
from app.report.build import Checker
from app.rules.evaluate import Bench
from app.rules.outcome import Outcome, Weight
from app.rules.rule import PART_KINDS


@dataclass(frozen=True)
class Plain:
    """One combination with its parts' ids and what all rules make of it."""

    key: str
    outcomes: tuple[tuple[Outcome, Weight], ...]

    @property
    def severity(self) -> int:
        """0 fits, 1 can't be told, 2 doesn't fit."""
        blocking = [outcome for outcome, weight in self.outcomes if weight is Weight.BLOCKS]
        if Outcome.FAILED in blocking:
            return 2
        return 1 if Outcome.CANT_TELL in blocking else 0


def every_combination(checker: Checker) -> Iterator[tuple[Part, ...]]:
    """All combinations of a catalogue, in the order of their ids within a hub."""
    for hub in checker.combinations.hubs:
        yield from ((*build, *drive) for build, drive in product(hub.builds, hub.drives))


def judge_one(checker: Checker, answers: Answers, parts: tuple[Part, ...]) -> Plain:
    """Ask every rule about one combination, with nothing kept from any other."""
    by_kind = dict(zip(PART_KINDS, parts, strict=True))
    outcomes = []
    for rule in checker.rules:
        bench = Bench(rule, answers, checker.catalogue, checker.standards)
        result = bench.result(tuple(by_kind[kind] for kind in rule.part_kinds))
        outcomes.append((result.outcome, result.weight))
    return Plain("+".join(part.id for part in parts), tuple(outcomes))
