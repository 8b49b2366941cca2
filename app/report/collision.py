"""For two bodies in one place: which other arm, axle set or rotor keeps them apart, found by trying them.

Turning the arm and moving its clamp are tried by the rules themselves, which judge the best place there is.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from app.catalogue.part import Part
from app.facts.answers import Answers
from app.report.bike_changes import BikeChange, rotor_changes
from app.report.combination import Combination
from app.report.numbers import PLACES, places_needed, shown, with_unit
from app.report.report import Finding
from app.rules.check import Check
from app.rules.evaluate import Bench
from app.rules.outcome import Outcome, Result, Weight, margin
from app.rules.rule import PART_KINDS, Rule

if TYPE_CHECKING:
    from app.report.build import Checker

COLLISIONS = (
    "arm_caliper",
    "arm_caliper_far",
    "arm_caliper_wanted",
    "arm_caliper_running",
    "arm_reach_clear_of_caliper",
    "shell_caliper",
    "shell_caliper_wanted",
    "shell_caliper_running",
    "caliper_spokes",
)
TAKE = "Take {name}: {by} in hand."
TAKE_MAY = "Take {name}: it may clear, measure again."
CHANGE_MAY = "{change} It may clear."
NOTHING = "No other arm, axle set or rotor of this catalogue clears it."
MOST = 2


@dataclass(frozen=True)
class Way:
    """One thing to try: parts and answers after it, and its words for a sure and for a possible clearance."""

    parts: tuple[Part, ...]
    answers: Answers
    touches: frozenset[str]
    name: str = ""
    change: str = ""


def _with(parts: tuple[Part, ...], kind: str, part: Part) -> tuple[Part, ...]:
    at = PART_KINDS.index(kind)
    return (*parts[:at], part, *parts[at + 1 :])


def _other_parts(checker: Checker, answers: Answers, parts: tuple[Part, ...]) -> Iterator[Way]:
    """Every other arm on the same axle set, then every other axle set of the hub with an arm of its own."""
    kit, catalogue = Combination.of(parts), checker.catalogue
    for arm in catalogue.torque_arms:
        if kit.axle_set.id in arm.axle_sets and arm is not kit.torque_arm:
            yield Way(_with(parts, "torque_arm", arm), answers, frozenset({"torque_arm"}), arm.name)
    for axle_set in catalogue.axle_sets:
        if kit.hub.id in axle_set.hubs and axle_set is not kit.axle_set:
            arm = next(each for each in catalogue.torque_arms if axle_set.id in each.axle_sets)
            other = _with(_with(parts, "axle_set", axle_set), "torque_arm", arm)
            yield Way(other, answers, frozenset({"axle_set", "torque_arm"}), axle_set.name)


def _ways(checker: Checker, answers: Answers, parts: tuple[Part, ...]) -> Iterator[Way]:
    yield from _other_parts(checker, answers, parts)
    changes: Sequence[BikeChange] = rotor_changes(answers, checker.standards)
    for change in changes:
        yield Way(parts, change.applied_to(answers), frozenset(change.facts), change=change.text)


def _touched(rule: Rule, way: Way) -> bool:
    return bool(way.touches.intersection(rule.part_kinds) or way.touches.intersection(rule.settled_by))


def _results(checker: Checker, way: Way, collided: str) -> tuple[Result, bool]:
    """What the rule of the collision makes of a way, and whether no rule that it touches stops the kit."""
    by_kind = dict(zip(PART_KINDS, way.parts, strict=True))
    benches = [bench for bench in checker.benches(way.answers) if _touched(bench.rule, way)]
    results = {bench.rule.id: _result(bench, by_kind) for bench in benches}
    stops = any(each.outcome is Outcome.FAILED and each.weight is Weight.BLOCKS for each in results.values())
    return results[collided], not stops


def _result(bench: Bench, by_kind: dict[str, Part]) -> Result:
    return bench.result(tuple(by_kind[kind] for kind in bench.rule.part_kinds))


def _said(way: Way, result: Result) -> str:
    if result.outcome is not Outcome.PASSED or not isinstance(result.given, Check):
        return TAKE_MAY.format(name=way.name) if way.name else CHANGE_MAY.format(change=way.change)
    room, unit = margin(result) or 0, result.given.unit
    by = with_unit(shown(room, places_needed(room, PLACES.get(unit, 0)), "down"), unit)
    return TAKE.format(name=way.name, by=by) if way.name else way.change


def _clearing(checker: Checker, ways: Sequence[Way], finding: Finding) -> Iterator[str]:
    """Sure ways first, then possible ones."""
    tried = [
        (way, *_results(checker, way, finding.rule_id)) for way in ways if _concerns(checker, way, finding)
    ]
    for wanted in (Outcome.PASSED, Outcome.CANT_TELL):
        yield from (_said(way, result) for way, result, free in tried if free and result.outcome is wanted)


def _concerns(checker: Checker, way: Way, finding: Finding) -> bool:
    return any(rule.id == finding.rule_id and _touched(rule, way) for rule in checker.rules)


def with_ways_clear(
    checker: Checker, answers: Answers, parts: tuple[Part, ...], findings: Sequence[Finding]
) -> tuple[Finding, ...]:
    """The findings of a combination; each collision says behind its remedy what was found to clear it."""
    collided = [each for each in findings if each.rule_id in COLLISIONS and each.state in ("no", "care")]
    if not collided:
        return tuple(findings)
    ways = list(_ways(checker, answers, parts))
    said: dict[str, str] = {}
    for finding in collided:
        found = list(dict.fromkeys(_clearing(checker, ways, finding)))[:MOST]
        said[finding.rule_id] = " ".join([finding.remedy, *(found or [NOTHING])])
    return tuple(
        replace(each, remedy=said[each.rule_id]) if each.rule_id in said else each for each in findings
    )
