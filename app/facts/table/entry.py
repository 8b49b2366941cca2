"""How one line of the table of facts is written down: a number or a choice, in the order of the stand."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from typing import TypeAlias

from app.facts.fact import ChoiceFact, Counts, Group, NumberFact, Tool, Word
from app.facts.span import Exact, Span

Ends: TypeAlias = tuple[Exact, Exact]

GROUPS: Mapping[str, Group] = dict(zip("ABCDEFG", Group, strict=True))

YES_NO: Mapping[str, str] = {"yes": "&Yes", "no": "&No"}


def number(
    letter: str,
    name: str,
    label: str,
    unit: str,
    *,
    can_be: Ends,
    usual: Ends,
    tools: tuple[Tool, ...],
    question: str,
    how: str,
    effort_s: int,
    decimals: int = 1,
    counts: Counts = Counts.MIDDLE,
) -> NumberFact:
    """A measured fact; both ranges are in the fact's unit."""
    return NumberFact(
        name=name,
        label=label,
        group=GROUPS[letter[0]],
        letter=letter,
        question=question,
        how_measured=how,
        effort_s=effort_s,
        unit=unit,
        can_be=Span.between(*can_be),
        usual=Span.between(*usual),
        tools=tools,
        decimals=decimals,
        counts=counts,
    )


def count(
    letter: str,
    name: str,
    label: str,
    *,
    can_be: tuple[int, int],
    usual: tuple[int, int],
    question: str,
    how: str,
    effort_s: int,
) -> NumberFact:
    """A counted fact: whole, without a unit and without uncertainty."""
    return NumberFact(
        name=name,
        label=label,
        group=GROUPS[letter[0]],
        letter=letter,
        question=question,
        how_measured=how,
        effort_s=effort_s,
        unit="",
        can_be=Span.between(*can_be),
        usual=Span.between(*usual),
        tools=(Tool("counted", 0),),
        decimals=0,
        whole=True,
    )


def gauge(letter: str, name: str, label: str, yes: str, *, question: str, how: str) -> ChoiceFact:
    """What a paper gauge tells that is held on the bike; no answer is as good as not having seen it."""
    asked = choice(
        letter,
        name,
        label,
        {"yes": yes, "touches": "&Touches", "unsure": "Can't &see"},
        question=question,
        how=how,
        effort_s=300,
    )
    return replace(asked, unanswered="unsure", by_gauge=True)


def choice(
    letter: str, name: str, label: str, words: Mapping[str, str], *, question: str, how: str, effort_s: int
) -> ChoiceFact:
    """A choice: each word with its label, and in the label an & before the letter that chooses it."""
    return ChoiceFact(
        name=name,
        label=label,
        group=GROUPS[letter[0]],
        letter=letter,
        question=question,
        how_measured=how,
        effort_s=effort_s,
        words=tuple(_word(word, marked) for word, marked in words.items()),
    )


def _word(word: str, marked: str) -> Word:
    before, after = marked.split("&")
    return Word(word, before + after, after[0].lower())
