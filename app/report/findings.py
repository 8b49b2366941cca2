"""Turns the results that are shown into findings; each is worded once, however many combinations share it."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from app.catalogue.part import Part
from app.facts.answers import Answers
from app.facts.fact import NumberFact
from app.facts.table import FACTS
from app.report.closer import advice
from app.report.numbers import PLACES, places_needed, shown, with_unit
from app.report.report import Finding, Measured
from app.report.wording import WORDS, places_for, remedy_of, sentence_of, state_of
from app.rules.check import Check, Limit
from app.rules.evaluate import Bench
from app.rules.outcome import Outcome, Result, margin, sides
from app.rules.rule import PART_KINDS, Rule

LEANS_NO = "leans no: {by} short"
LEANS_YES = "leans yes: {by} in hand"


def open_facts_of(bench: Bench, answers: Answers, result: Result, parts: tuple[Part, ...]) -> tuple[str, ...]:
    """The facts that this result lacks: choices with several words still possible, and numbers not known."""
    if result.outcome is not Outcome.CANT_TELL:
        return ()
    read = bench.numbers_read(parts, result)
    lacking = {*result.tried, *(name for name in read if not answers.is_known(name))}
    return tuple(name for name in bench.rule.settled_by if name in lacking)


def close_facts_of(
    bench: Bench, answers: Answers, result: Result, parts: tuple[Part, ...]
) -> tuple[str, ...]:
    """The known numbers that a closer reading could narrow."""
    read = bench.numbers_read(parts, result)
    return tuple(
        name for name in read if not answers.span(name).is_exact and isinstance(FACTS[name], NumberFact)
    )


def leaning_of(result: Result) -> str:
    """Which way a straddling reading leans, by its middle."""
    given = result.given
    if not isinstance(given, Check) or given.reading is None:
        return ""
    middle = (given.reading.low + given.reading.high) // 2
    room = []
    for limit, outcome in sides(given):
        if outcome is Outcome.CANT_TELL:
            end = (limit.value.low + limit.value.high) // 2
            room.append(middle - end if limit is given.low else end - middle)
    if not room:
        return ""
    by = with_unit(shown(abs(min(room)), places_needed(min(room), PLACES.get(given.unit, 0))), given.unit)
    return (LEANS_NO if min(room) < 0 else LEANS_YES).format(by=by)


def source_of(rule: Rule, result: Result) -> str:
    """Where the limit comes from: the limit's own source if it names one, else the rule's."""
    given = result.given
    if isinstance(given, Check):
        own = [limit.source for limit in (given.low, given.high) if limit is not None and limit.source]
        if own:
            return "; ".join(dict.fromkeys(own))
    return str(rule.source)


def measured_of(result: Result, state: str) -> Measured | None:
    """The reading and the limits that the sentence speaks of; None where it names none."""
    given = result.given
    if not isinstance(given, Check) or given.reading is None or state == "open":
        return None
    if result.tried and result.outcome is Outcome.PASSED:
        return None
    reading = (given.reading.low, given.reading.high)
    return Measured(reading, _ends(given.low), _ends(given.high), places_for(given, result))


def _ends(limit: Limit | None) -> tuple[int, int] | None:
    return None if limit is None else (limit.value.low, limit.value.high)


def finding_of(bench: Bench, answers: Answers, parts: tuple[Part, ...]) -> Finding:
    """What one rule says of its own parts, in the order of `rule.part_kinds`, worded."""
    rule, result = bench.rule, bench.result(parts)
    open_facts = open_facts_of(bench, answers, result, parts)
    state = state_of(result, open_facts)
    sentence, leaning = sentence_of(rule, result, state), ""
    unit = result.given.unit if isinstance(result.given, Check) else ""
    if state == "close":
        leaning = leaning_of(result)
        sentence = f"{sentence} {advice(bench, answers, result, parts)}"
        open_facts = close_facts_of(bench, answers, result, parts)
    return Finding(
        rule.id, rule.title, rule.family, state, result.outcome.earl, result.weight.value,
        WORDS[state], sentence, remedy_of(rule, result), source_of(rule, result),
        rule.settled_by, open_facts, leaning, margin(result), unit,
        measured_of(result, state),
    )  # fmt: skip


class FindingsOf:
    """The findings about one bike. Each is worded once for as long as its rule sees the same of a bike."""

    def __init__(self, benches: Sequence[Bench], answers: Answers) -> None:
        self._benches = benches
        self._answers = answers

    def about(self, parts: tuple[Part, ...]) -> tuple[Finding, ...]:
        """One finding a rule for a whole combination, in the order of the register."""
        by_kind: Mapping[str, Part] = dict(zip(PART_KINDS, parts, strict=True))
        return tuple(
            self._finding(bench, tuple([by_kind[kind] for kind in bench.rule.part_kinds]))
            for bench in self._benches
        )

    def troubles(self, parts: tuple[Part, ...]) -> tuple[Finding, ...]:
        """The same, but only the findings that failed or can't tell: enough to say where a kit stands."""
        by_kind: Mapping[str, Part] = dict(zip(PART_KINDS, parts, strict=True))
        asked = [(bench, tuple([by_kind[kind] for kind in bench.rule.part_kinds])) for bench in self._benches]
        return tuple(
            self._finding(bench, own)
            for bench, own in asked
            if bench.result(own).outcome >= Outcome.CANT_TELL
        )

    def _finding(self, bench: Bench, parts: tuple[Part, ...]) -> Finding:
        key = ("finding", *[part.id for part in parts])
        found: Finding | None = bench.kept.get(key)
        if found is None:
            found = bench.kept[key] = finding_of(bench, self._answers, parts)
        return found
