"""The rows of the counter sheet: for each fact what is typed, how it was read and what it does."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from itertools import groupby
from operator import attrgetter

from app.facts.answers import Answer, Answers
from app.facts.fact import ChoiceFact, Fact, Group, NumberFact
from app.facts.messages import RANGE
from app.facts.reading import FactError
from app.facts.shown import plain_number, what_we_read, with_unit
from app.facts.table import FACTS
from app.web.counter_marks import UNMARKED, Mark
from app.web.entry import Entry
from app.web.written import NOT_KNOWN, NOTHING, Sheet, Written

GROUP_NAMES: Mapping[Group, str] = {
    Group.FRAME: "Frame and axle",
    Group.BRAKE: "Brake",
    Group.DRIVETRAIN: "Drivetrain",
    Group.STAY: "Left chainstay",
    Group.WHEEL: "Wheel",
    Group.FIT_OUT: "Fit-out",
    Group.WISH: "Wish",
}
WHICH_GAUGE = "Choose the gauge that was held, as printed on it; until then this moves nothing."
UNUSUAL = "Unusual: mostly {range}."


@dataclass(frozen=True, slots=True)
class Row:
    """One fact on the sheet.

    other  what stands typed for a choice though it is none of its words, such as "post or flat"; else empty
    """

    fact: Fact
    entry: Entry
    other: str = ""

    @property
    def is_choice(self) -> bool:
        """Whether the fact is a choice of words rather than a number."""
        return isinstance(self.fact, ChoiceFact)


@dataclass(frozen=True, slots=True)
class RowGroup:
    """The rows that are filled in together, with their letter."""

    letter: str
    name: str
    rows: tuple[Row, ...]


@dataclass(frozen=True)
class Seen:
    """All that rows are made of: what is written and stored, how it was read, the errors and the marks."""

    sheet: Sheet
    stored: Sheet
    answers: Answers
    errors: tuple[FactError, ...]
    marks: Mapping[str, Mark]


def rows_of(seen: Seen) -> tuple[Row, ...]:
    """One row for each fact of the table."""
    messages = {name: error.message for error in seen.errors for name in (error.also, error.fact) if name}
    return tuple(_row(fact, seen, messages.get(name, "")) for name, fact in FACTS.items())


def in_groups(rows: tuple[Row, ...]) -> tuple[RowGroup, ...]:
    """The rows group by group, in the order of the stand."""
    by_group = groupby(rows, key=attrgetter("fact.group"))
    groups = [(group, tuple(found)) for group, found in by_group]
    return tuple(RowGroup(found[0].fact.letter[0], GROUP_NAMES[group], found) for group, found in groups)


def _row(fact: Fact, seen: Seen, error: str) -> Row:
    now, answer = seen.sheet.get(fact.name, NOTHING), seen.answers.get(fact.name)
    mark = UNMARKED if error else seen.marks.get(fact.name, UNMARKED)
    entry = Entry(
        typed=now.typed,
        tool=now.tool,
        reading=_reading(fact, answer),
        state=mark.state,
        words=mark.words,
        error=error,
        note=" ".join(filter(None, (unusual(fact, answer), _nameless(fact, answer), mark.why))),
        can_undo=now != seen.stored.get(fact.name, NOTHING),
    )
    return Row(fact, entry, _other(fact, now))


def _reading(fact: Fact, answer: Answer | None) -> str:
    if answer is None:
        return ""
    # Of a choice, the chosen word itself says how it was read.
    says_all = isinstance(fact, ChoiceFact) and answer.words is not None and len(answer.words) == 1
    return "" if says_all else what_we_read(fact, answer)


def _other(fact: Fact, now: Written) -> str:
    if not isinstance(fact, ChoiceFact) or now.typed in {"", NOT_KNOWN, *fact.all_words}:
        return ""
    return now.typed


def _nameless(fact: Fact, answer: Answer | None) -> str:
    """A sentence about an answer by a gauge that nobody has named."""
    tells = isinstance(fact, ChoiceFact) and fact.by_gauge and answer is not None and answer.known
    return WHICH_GAUGE if tells and answer is not None and not answer.tool else ""


def unusual(fact: Fact, answer: Answer | None) -> str:
    """A sentence about a reading whose middle lies outside what is usual, though it can be."""
    if not isinstance(fact, NumberFact) or answer is None or answer.span is None:
        return ""
    low, high, twice_middle = fact.usual.low, fact.usual.high, answer.span.low + answer.span.high
    if 2 * low <= twice_middle <= 2 * high:
        return ""
    usual = RANGE.format(low=plain_number(low), high=plain_number(high))
    return UNUSUAL.format(range=with_unit(fact, usual))
