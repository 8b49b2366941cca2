"""The answers that have been given about one bike, each as typed and as read; the rest is not known."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, field
from functools import cached_property
from types import MappingProxyType

from app.facts.fact import ChoiceFact, NumberFact
from app.facts.span import Span
from app.facts.table import FACTS


@dataclass(frozen=True, slots=True)
class Answer:
    """One answer: the text as typed, the tool, and the span or the words it was read as.

    Neither span nor words: the fact was asked and is not known.
    """

    fact: str
    typed: str
    tool: str = ""
    span: Span | None = None
    words: frozenset[str] | None = None

    @property
    def known(self) -> bool:
        """Whether the answer says anything."""
        return self.span is not None or self.words is not None


@dataclass(frozen=True)
class Answers(Mapping[str, Answer]):
    """All answers by fact name, in the order of the table. A name outside the table is a KeyError."""

    given: Mapping[str, Answer] = field(default_factory=dict)

    def __post_init__(self) -> None:
        unknown = [name for name in self.given if name not in FACTS]
        if unknown:
            raise KeyError(unknown[0])
        ordered = {name: self.given[name] for name in FACTS if name in self.given}
        object.__setattr__(self, "given", MappingProxyType(ordered))

    def __hash__(self) -> int:
        return self._hash

    @cached_property
    def _hash(self) -> int:
        return hash(tuple(self.given.values()))

    def __getitem__(self, name: str) -> Answer:
        return self.given[name]

    def __iter__(self) -> Iterator[str]:
        return iter(self.given)

    def __len__(self) -> int:
        return len(self.given)

    def is_known(self, name: str) -> bool:
        """Whether a fact has an answer that says something."""
        answer = self.given.get(name)
        return answer is not None and answer.known

    def span(self, name: str) -> Span:
        """The reading of a number, or the widest span the trade allows."""
        fact = FACTS[name]
        answer = self.given.get(name)
        if not isinstance(fact, NumberFact):
            message = f"{name} is a choice of words, not a number."
            raise TypeError(message)
        return answer.span if answer is not None and answer.span is not None else fact.can_be

    def words(self, name: str) -> frozenset[str]:
        """The words still possible of a choice; where it is not known, what no answer is as good as."""
        fact = FACTS[name]
        answer = self.given.get(name)
        if not isinstance(fact, ChoiceFact):
            message = f"{name} is a number, not a choice of words."
            raise TypeError(message)
        return answer.words if answer is not None and answer.words is not None else fact.not_answered

    def with_(self, *answers: Answer) -> Answers:
        """These answers with others put in or replaced."""
        return Answers({**self.given, **{answer.fact: answer for answer in answers}})

    def without(self, *names: str) -> Answers:
        """These answers without some of them."""
        return Answers({name: answer for name, answer in self.given.items() if name not in names})

    def gauge(self, name: str) -> str:
        """The name of the paper gauge that an answer was given by; empty where none was named."""
        fact, answer = FACTS[name], self.given.get(name)
        is_named = isinstance(fact, ChoiceFact) and fact.by_gauge and answer is not None
        return answer.tool if answer is not None and is_named else ""


def number(name: str, span: Span, typed: str = "") -> Answer:
    """An answer that is already read, for tests and for trying a change."""
    return Answer(name, typed, span=span)


def choice(name: str, words: Iterable[str], typed: str = "") -> Answer:
    """A choice that is already read, for tests and for trying a change."""
    return Answer(name, typed, words=frozenset(words))
