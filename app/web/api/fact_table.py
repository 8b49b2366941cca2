"""The table of facts as JSON: what can be told of a bike and a wish, in which unit, read with what."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Annotated, Any, Literal, TypeAlias

from pydantic import Field

from app.facts.fact import ChoiceFact, Fact, NumberFact
from app.facts.json_reader import section_of
from app.facts.table import FACTS
from app.web.api.in_unit import Ends, Number, ends_of, in_unit


@dataclass(frozen=True, slots=True, kw_only=True)
class FactLine:
    """What every fact has in common.

    section   where it stands in the JSON of a check: bike or wish
    effort_s  what taking it costs, in seconds
    """

    name: str
    section: str
    group: str
    label: str
    question: str
    how_measured: str
    effort_s: int


@dataclass(frozen=True, slots=True)
class ToolLine:
    """A way to take a reading and how far off it can be, in the fact's unit.

    best  the narrowest ± that counts where one is sent with the value
    """

    name: str
    plus_minus: Number
    best: Number


@dataclass(frozen=True, slots=True, kw_only=True)
class NumberLine(FactLine):
    """A measured or counted number.

    unit    empty for a plain count
    can_be  what an entry must lie in, and what an unanswered fact is
    usual   outside this an entry is possible but rare
    tools   the first is taken where none is named
    whole   true for counts, which have no places and no uncertainty
    counts  which of several readings counts: smallest, largest or middle
    """

    kind: Literal["number"] = "number"
    unit: str
    can_be: Ends
    usual: Ends
    tools: tuple[ToolLine, ...]
    decimals: int
    whole: bool
    counts: str


@dataclass(frozen=True, slots=True)
class WordLine:
    """One word of a choice: as it is sent, and as it is shown."""

    word: str
    label: str


@dataclass(frozen=True, slots=True, kw_only=True)
class ChoiceLine(FactLine):
    """A choice between a few words of the trade."""

    kind: Literal["choice"] = "choice"
    words: tuple[WordLine, ...]


Line: TypeAlias = Annotated[NumberLine | ChoiceLine, Field(discriminator="kind")]


@dataclass(frozen=True, slots=True)
class FactTable:
    """Every fact, in the order in which a bike is handled on the stand."""

    facts: tuple[Line, ...]


def fact_table() -> FactTable:
    """The one table of facts, with every number in its fact's unit."""
    return FactTable(tuple(map(_line, FACTS.values())))


def _line(fact: Fact) -> NumberLine | ChoiceLine:
    return _number(fact) if isinstance(fact, NumberFact) else _choice(fact)


def _number(fact: NumberFact) -> NumberLine:
    return NumberLine(
        **_asked(fact),
        unit=fact.unit,
        can_be=ends_of(fact.can_be),
        usual=ends_of(fact.usual),
        tools=tuple(ToolLine(each.name, in_unit(each.plus_minus), in_unit(each.best)) for each in fact.tools),
        decimals=fact.decimals,
        whole=fact.whole,
        counts=fact.counts,
    )


def _choice(fact: ChoiceFact) -> ChoiceLine:
    return ChoiceLine(**_asked(fact), words=tuple(WordLine(each.word, each.label) for each in fact.words))


def _asked(fact: Fact) -> dict[str, Any]:
    return {
        "name": fact.name,
        "section": section_of(fact),
        "group": fact.group.value,
        "label": fact.label,
        "question": fact.question,
        "how_measured": fact.how_measured,
        "effort_s": fact.effort_s,
    }
