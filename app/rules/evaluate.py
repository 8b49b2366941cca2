"""Asks a rule about one bike: once for each set of parts that its signature names, and no oftener."""

from __future__ import annotations

from collections.abc import Hashable
from typing import Any

from app.catalogue.catalogue import Catalogue
from app.catalogue.part import Part
from app.catalogue.standards import Standards
from app.facts.answers import Answers
from app.facts.bike import Bike, Watched, Wish, WordNeeded
from app.facts.fact import ChoiceFact, Group
from app.facts.span import Span
from app.facts.table import FACTS
from app.rules.check import Given
from app.rules.outcome import Result, decide, join
from app.rules.rule import Rule


class Bench:
    """One rule put to one bike. Answers are kept by the parts they were asked about.

    kept  what later layers make of these answers and want to keep as long as the answers hold
    """

    def __init__(self, rule: Rule, answers: Answers, stock: Catalogue, standards: Standards) -> None:
        self.rule = rule
        self._stock, self._standards = stock, standards
        handed: dict[str, Any] = {"standards": standards, "stock": stock}
        self._arguments = [handed.get(name) for name in rule.takes]
        self._function = rule.function
        self._part_places = [rule.takes.index(kind) for kind in rule.part_kinds]
        self._view_places = [
            (at, ("bike", "wish").index(name))
            for at, name in enumerate(rule.takes)
            if name in ("bike", "wish")
        ]
        self._spans: dict[str, Span] = {}
        self._words: dict[str, tuple[str, ...]] = {}
        self._gauges: dict[str, str] = {}
        for name in rule.settled_by:
            if isinstance(FACTS[name], ChoiceFact):
                self._words[name] = tuple(sorted(answers.words(name)))
                self._gauges[name] = answers.gauge(name)
            else:
                self._spans[name] = answers.span(name)
        self._views: dict[tuple[tuple[str, str], ...], tuple[Bike, Wish]] = {}
        self._known = tuple((name, words[0]) for name, words in self._words.items() if len(words) == 1)
        self._results: dict[tuple[str, ...], Result] = {}
        self.kept: dict[Hashable, Any] = {}

    def with_answers(self, answers: Answers) -> Bench:
        """The same rule put to the same bike with other answers."""
        return Bench(self.rule, answers, self._stock, self._standards)

    def result(self, parts: tuple[Part, ...], key: tuple[str, ...] | None = None) -> Result:
        """What the rule makes of these parts, given in the order of `rule.part_kinds`.

        key  the parts' ids, where the caller has them at hand
        """
        key = tuple([part.id for part in parts]) if key is None else key
        found = self._results.get(key)
        if found is None:
            found = self._results[key] = self._ask(parts, ())
        return found

    def _ask(self, parts: tuple[Part, ...], tried: tuple[tuple[str, str], ...]) -> Result:
        try:
            given = self._call(parts, self._views.get(tried) or self._view(tried))
        except WordNeeded as needed:
            fact = needed.fact
            each = [self._ask(parts, (*tried, (fact, word))) for word in self._words[fact]]
            return join(each, (fact,))
        result = decide(given, self.rule.weight)
        return result._replace(words=dict(tried)) if tried else result

    def _call(self, parts: tuple[Part, ...], views: tuple[Any, Any]) -> Given:
        arguments = self._arguments.copy()
        for place, which in self._view_places:
            arguments[place] = views[which]
        for place, part in zip(self._part_places, parts, strict=False):
            arguments[place] = part
        return self._function(*arguments)

    def _view(self, tried: tuple[tuple[str, str], ...]) -> tuple[Bike, Wish]:
        words = dict((*self._known, *tried))
        still_open = frozenset(self._words) - frozenset(words)
        values: dict[str, Span | str] = {**self._spans, **words}
        wished = {name: value for name, value in values.items() if FACTS[name].group is Group.WISH}
        ridden = {name: value for name, value in values.items() if FACTS[name].group is not Group.WISH}
        views = self._views[tried] = (Bike(ridden, still_open, self._gauges), Wish(wished, still_open))
        return views

    def numbers_read(self, parts: tuple[Part, ...], result: Result) -> tuple[str, ...]:
        """The numeric facts that the rule looked at for this result, in the order of `settled_by`."""
        seen: set[str] = set()
        view = Watched({**self._spans, **dict(self._known), **result.words}, seen, self._gauges)
        self._call(parts, (view, view))
        return tuple(name for name in self._spans if name in seen)
