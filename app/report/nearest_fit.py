"""For a bike that nothing fits: the fewest changes, two at most, after which nothing rules a kit out."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import combinations as pairs_of
from typing import TYPE_CHECKING

from app.catalogue.part import Part
from app.facts.answers import Answers
from app.report.bike_changes import BikeChange, changes_for
from app.report.numbers import PLACES, places_needed, shown, with_unit
from app.report.report import CombinationReport, Finding, Nearest
from app.rules.evaluate import Bench
from app.rules.outcome import Outcome, Result, Weight
from app.rules.rule import PART_KINDS, Rule

if TYPE_CHECKING:
    from app.report.build import Checker

NEW_PART = "No part in this catalogue makes it fit. {remedy}"
NEW_PART_BY = "No part in this catalogue makes it fit: it is {short} off at best. {remedy}"
MOST = 3


@dataclass(frozen=True)
class _Tried:
    """One combination on the failed bike, with the rules that stop it."""

    combination: CombinationReport
    parts: tuple[Part, ...]
    stopped_by: frozenset[str]


def _stops(result: Result) -> bool:
    return result.outcome is Outcome.FAILED and result.weight is Weight.BLOCKS


def _own_parts(rule: Rule, parts: tuple[Part, ...]) -> tuple[Part, ...]:
    by_kind = dict(zip(PART_KINDS, parts, strict=True))
    return tuple(by_kind[kind] for kind in rule.part_kinds)


class _Trial:
    """Puts changes of the bike to single combinations; asks only the rules that a change touches."""

    def __init__(self, checker: Checker, answers: Answers) -> None:
        self._checker = checker
        self._answers = answers
        self._benches: dict[tuple[str, tuple[str, ...]], Bench] = {}

    def clears(self, tried: _Tried, changes: tuple[BikeChange, ...]) -> bool:
        """Whether nothing stops the combination after the changes."""
        touched = {name for change in changes for name in change.facts}
        rules = [rule for rule in self._checker.rules if touched.intersection(rule.settled_by)]
        if not tried.stopped_by <= {rule.id for rule in rules}:
            return False
        return not any(
            _stops(self._bench(rule, changes).result(_own_parts(rule, tried.parts))) for rule in rules
        )

    def _bench(self, rule: Rule, changes: tuple[BikeChange, ...]) -> Bench:
        key = (rule.id, tuple(change.text for change in changes))
        if key not in self._benches:
            answers = self._answers
            for change in changes:
                answers = change.applied_to(answers)
            self._benches[key] = Bench(rule, answers, self._checker.catalogue, self._checker.standards)
        return self._benches[key]


def _clearing(
    trial: _Trial, tried: _Tried, changes: Sequence[BikeChange]
) -> Iterator[tuple[BikeChange, ...]]:
    yield from ((change,) for change in changes if trial.clears(tried, (change,)))
    two = ((one, other) for one, other in pairs_of(changes, 2) if not set(one.facts) & set(other.facts))
    yield from (both for both in two if trial.clears(tried, both))


def _short(finding: Finding) -> str:
    missing = abs(finding.margin or 0)
    return with_unit(
        shown(missing, places_needed(missing, PLACES.get(finding.unit, 0)), "down"), finding.unit
    )


def _new_part(tried: _Tried) -> Nearest | None:
    """The part that would do, where one rule alone stops a combination and knows what it lacks."""
    findings = [finding for finding in tried.combination.findings if finding.rule_id in tried.stopped_by]
    if len(findings) != 1 or not findings[0].remedy:
        return None
    combination, lacking = tried.combination, findings[0]
    template = NEW_PART if lacking.margin is None else NEW_PART_BY
    change = template.format(remedy=lacking.remedy, short=_short(lacking))
    return Nearest((change,), combination.parts["hub"].name, combination.key, new_part=True)


def nearest_fits(
    checker: Checker, answers: Answers, combinations: Sequence[CombinationReport]
) -> tuple[Nearest, ...]:
    """The nearest fits over the combinations shown, fewest changes first; a part not yet made comes last."""
    trial = _Trial(checker, answers)
    changes = changes_for(answers, checker.catalogue, checker.standards)
    found: list[Nearest] = []
    for tried in _tried(checker, combinations):
        clearing = next(_clearing(trial, tried, changes), None)
        if clearing is not None:
            combination = tried.combination
            texts = tuple(change.text for change in clearing)
            found.append(Nearest(texts, combination.parts["hub"].name, combination.key))
        elif (new := _new_part(tried)) is not None:
            found.append(new)
    found.sort(key=lambda each: (each.new_part, len(each.changes)))
    return tuple({(each.changes, each.kit): each for each in found}.values())[:MOST]


def _tried(checker: Checker, combinations: Sequence[CombinationReport]) -> list[_Tried]:
    by_id = {kind: {part.id: part for part in checker.catalogue.parts(f"{kind}s")} for kind in PART_KINDS}
    unique = {combination.key: combination for combination in combinations}
    return [
        _Tried(
            combination,
            tuple(by_id[kind][combination.parts[kind].id] for kind in PART_KINDS),
            frozenset(each.rule_id for each in combination.findings if each.state == "no"),
        )
        for combination in unique.values()
    ]
