"""What came of reading: the answers, what can't be read and why, and every text as it was typed."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from types import MappingProxyType
from typing import TypeAlias

from app.facts.answers import Answer, Answers
from app.facts.choice_reader import read_choice
from app.facts.fact import ChoiceFact, Fact, NumberFact
from app.facts.messages import ENTER, SELECT, TOO_LONG, TOOL, NotReadError, listed
from app.facts.number_reader import read_number
from app.facts.plain_text import LONGEST, SHORT, cut


@dataclass(frozen=True, slots=True)
class FactError:
    """One entry that can't stand: the fact, what was typed (cut to 200 characters) and the sentence to show.

    fact  empty where the fault lies in no single fact
    also  the second fact, where two can't both be
    """

    fact: str
    typed: str
    message: str
    also: str = ""


@dataclass(frozen=True)
class Reading:
    """Answers, errors, and under its field's name every text that was typed, cut to 200 characters."""

    answers: Answers
    errors: tuple[FactError, ...] = ()
    typed: Mapping[str, str] = field(default_factory=dict)


Read: TypeAlias = Answer | FactError


def read_answer(fact: Fact, typed: str, tool: str = "") -> Read:
    """One entry as an answer, or the error to show beside it. Never raises."""
    try:
        return _answer(fact, typed, tool)
    except NotReadError as fault:
        return FactError(fact.name, cut(typed), str(fault))


def reading_of(results: Iterable[Read], typed: Mapping[str, str]) -> Reading:
    """Answers and errors sorted apart."""
    results = tuple(results)
    answers = Answers({each.fact: each for each in results if isinstance(each, Answer)})
    errors = tuple(each for each in results if isinstance(each, FactError))
    return Reading(answers, errors, MappingProxyType({name: cut(text) for name, text in typed.items()}))


def lower_label(fact: Fact) -> str:
    """The label as it stands inside a sentence."""
    return fact.label[0].lower() + fact.label[1:]


def _answer(fact: Fact, typed: str, tool: str) -> Answer:
    if len(typed) > LONGEST:
        raise NotReadError(TOO_LONG.format(label=fact.label, most=LONGEST, length=len(typed)))
    if not typed.strip():
        raise NotReadError((ENTER if isinstance(fact, NumberFact) else SELECT).format(fact=lower_label(fact)))
    if isinstance(fact, ChoiceFact):
        gauge = cut(" ".join(tool.split())) if fact.by_gauge else ""
        return Answer(fact.name, typed, gauge, words=read_choice(fact, typed))
    _check_tool(fact, tool)
    return Answer(fact.name, typed, tool, span=read_number(fact, typed, tool))


def _check_tool(fact: NumberFact, tool: str) -> None:
    names = [each.name for each in fact.tools]
    if tool and tool not in names:
        text = TOOL.format(fact=lower_label(fact), allowed=listed(names), typed=cut(tool, SHORT))
        raise NotReadError(text)
