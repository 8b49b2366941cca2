"""The two kinds of fact that can be asked of a bike: a number with a unit, or a choice of words."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum
from typing import TypeAlias

from app.facts.span import Span


class Group(StrEnum):
    """The order in which a bike is handled on the stand."""

    FRAME = "frame"
    BRAKE = "brake"
    DRIVETRAIN = "drivetrain"
    STAY = "stay"
    WHEEL = "wheel"
    FIT_OUT = "fit_out"
    WISH = "wish"


class Counts(StrEnum):
    """Which of several readings counts."""

    SMALLEST = "smallest"
    LARGEST = "largest"
    MIDDLE = "middle"


@dataclass(frozen=True, slots=True)
class Tool:
    """A way to take a reading and how far off it can be, in thousandths of the fact's unit.

    plus_minus  what a reading has when nothing is said about it
    best        the narrowest that somebody may claim by typing a ± of their own
    """

    name: str
    plus_minus: int
    best: int = 0


@dataclass(frozen=True, slots=True)
class Word:
    """One word of a choice: as stored, as shown, and the letter that chooses it on the counter sheet."""

    word: str
    label: str
    key: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Asked:
    """What every fact has in common.

    letter        the code of the fact on the counter sheet, such as A3
    question      as a customer is asked it
    how_measured  one sentence: how to take it
    effort_s      what taking it costs, in seconds, wheel in unless the sentence says out
    """

    name: str
    label: str
    group: Group
    letter: str
    question: str
    how_measured: str
    effort_s: int


@dataclass(frozen=True, slots=True, kw_only=True)
class NumberFact(Asked):
    """A measured or counted number.

    unit      as printed; empty for a plain count
    can_be    the widest the trade allows: what an unanswered fact is, and what an entry must lie in
    usual     outside this the value is possible but is asked about once more
    tools     best first; the first is taken when none is named
    decimals  places shown
    whole     True for counts, which have no places and no uncertainty
    counts    which of several readings counts
    """

    unit: str
    can_be: Span
    usual: Span
    tools: tuple[Tool, ...]
    decimals: int
    whole: bool = False
    counts: Counts = Counts.MIDDLE

    def tool(self, name: str) -> Tool:
        """The named tool, or the best one where no such tool is listed."""
        return next((tool for tool in self.tools if tool.name == name), self.tools[0])


@dataclass(frozen=True, slots=True, kw_only=True)
class ChoiceFact(Asked):
    """A choice between a few words of the trade.

    unanswered  the word that is as good as no answer; where there is none, an unanswered choice may be any
    by_gauge    the answer holds for one paper gauge alone, whose name stands where others have their tool
    """

    words: tuple[Word, ...]
    unanswered: str | None = None
    by_gauge: bool = False

    @property
    def all_words(self) -> frozenset[str]:
        """Every word of the choice."""
        return frozenset(word.word for word in self.words)

    @property
    def not_answered(self) -> frozenset[str]:
        """What an unanswered choice is."""
        return self.all_words if self.unanswered is None else frozenset({self.unanswered})

    def label_of(self, word: str) -> str:
        """The word as it is shown."""
        return next(each.label for each in self.words if each.word == word)


Fact: TypeAlias = NumberFact | ChoiceFact
