"""Keeps rules with what they were last asked about, so that one changed answer asks only the rules it moves.

A rule's answers depend on the facts it names and on nothing else of the bike. While a sheet is being
typed, most rules see the same facts as a moment ago; a rule that names no fact sees the same for ever.
"""

from __future__ import annotations

from collections.abc import Hashable, Sequence
from dataclasses import dataclass, field
from functools import lru_cache, partial

from app.catalogue.catalogue import Catalogue
from app.catalogue.standards import Standards
from app.facts.answers import Answers
from app.rules.evaluate import Bench
from app.rules.rule import Rule

# So many bikes that differ for one rule are remembered; a sheet that is typed needs two.
KEPT = 16


def what_it_sees(rule: Rule, answers: Answers) -> tuple[Hashable, ...]:
    """All that a rule, and the sentences about it, can see of a bike: spans, words, gauges, gaps."""
    seen: list[Hashable] = []
    for name in rule.settled_by:
        answer = answers.given.get(name)
        if answer is None or not answer.known:
            seen.append(None)
        elif answer.span is not None:
            seen.append((answer.span.low, answer.span.high))
        else:
            seen.append((answer.words, answers.gauge(name)))
    return tuple(seen)


@dataclass(frozen=True, slots=True)
class Sight:
    """A bike as one rule sees it: two bikes that look alike to the rule are the same sight."""

    seen: tuple[Hashable, ...]
    answers: Answers = field(compare=False)


class Shelf:
    """All rules of a register, over one catalogue. Asking is safe from several threads."""

    def __init__(self, rules: Sequence[Rule], stock: Catalogue, standards: Standards) -> None:
        self._stock, self._standards = stock, standards
        self._rules = [(rule, lru_cache(maxsize=KEPT)(partial(self._bench, rule))) for rule in rules]

    def benches(self, answers: Answers) -> list[Bench]:
        """Every rule, ready to be asked about this bike, in the order of the register."""
        return [bench_for(Sight(what_it_sees(rule, answers), answers)) for rule, bench_for in self._rules]

    def _bench(self, rule: Rule, sight: Sight) -> Bench:
        return Bench(rule, sight.answers, self._stock, self._standards)
