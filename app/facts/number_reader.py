"""A typed number becomes a span: the tool's uncertainty is added, and nothing outside what can be is kept."""

from __future__ import annotations

from fractions import Fraction
from statistics import median

from app.facts.amounts import Amount
from app.facts.fact import Counts, NumberFact, Tool
from app.facts.messages import OUTSIDE, OUTSIDE_MEANT, UPSIDE_DOWN, NotReadError
from app.facts.number_grammar import Around, Between, written
from app.facts.plain_text import SHORT, cut
from app.facts.shown import plain_number, with_unit
from app.facts.span import THOUSAND, Exact, Span

SHIFTS = tuple(Fraction(10) ** power for power in (-1, 1, -2, 2, -3, 3))


def read_number(fact: NumberFact, typed: str, tool: str = "") -> Span | None:
    """The span that was typed, None for 'not known'. Raises NotReadError with the sentence to show."""
    match written(fact, typed):
        case None:
            return None
        case Between(low, high):
            return _between(fact, low, high, typed)
        case Around() as around:
            return _around(fact, around, fact.tool(tool), typed)


def _between(fact: NumberFact, low: Amount | None, high: Amount | None, typed: str) -> Span:
    least, most = _ends(fact)
    first = least if low is None else low.value
    second = most if high is None else high.value
    if low is not None and high is not None and first > second:
        raise NotReadError(UPSIDE_DOWN)
    if first > most or second < least:
        raise NotReadError(_outside(fact, typed))
    return _clipped(fact, Span.between(max(first, least), min(second, most)))


def _around(fact: NumberFact, around: Around, tool: Tool, typed: str) -> Span:
    least, most = _ends(fact)
    values = [reading.value for reading in around.readings]
    if not all(least <= value <= most for value in values):
        raise NotReadError(_outside(fact, typed, around))
    return _clipped(fact, Span.around(_that_counts(fact, values), _plus_minus(around, tool)))


def _that_counts(fact: NumberFact, values: list[Fraction]) -> Fraction:
    if fact.counts is Counts.SMALLEST:
        return min(values)
    if fact.counts is Counts.LARGEST:
        return max(values)
    return median(values)


def _plus_minus(around: Around, tool: Tool) -> Exact:
    values = [reading.value for reading in around.readings]
    typed, best = around.plus_minus, Fraction(tool.best, THOUSAND)
    stated = Fraction(tool.plus_minus, THOUSAND) if typed is None else max(typed.value, best)
    half_step = max(reading.half_step for reading in around.readings) if around.half_step_counts else 0
    return max(stated, (max(values) - min(values)) / 2, half_step)


def _ends(fact: NumberFact) -> tuple[Fraction, Fraction]:
    return Fraction(fact.can_be.low, THOUSAND), Fraction(fact.can_be.high, THOUSAND)


def _clipped(fact: NumberFact, span: Span) -> Span:
    return Span(max(span.low, fact.can_be.low), min(span.high, fact.can_be.high))


def _outside(fact: NumberFact, typed: str, around: Around | None = None) -> str:
    meant = _meant(fact, around) if around else None
    return (OUTSIDE_MEANT if meant else OUTSIDE).format(
        label=fact.label,
        low=plain_number(fact.can_be.low),
        high=with_unit(fact, plain_number(fact.can_be.high)),
        typed=cut(typed.strip(), SHORT),
        meant=meant,
    )


def _meant(fact: NumberFact, around: Around) -> str | None:
    """The typed number with its point shifted, where that makes it a usual one."""
    if len(around.readings) > 1 or around.half_step_counts or fact.whole:
        return None
    value = around.readings[0].value * THOUSAND
    step = THOUSAND // 10 ** min(3, fact.decimals + 1)
    shifted = [value * shift for shift in SHIFTS]
    return next(
        (plain_number(int(each)) for each in shifted if each % step == 0 and _usual(fact, each)), None
    )


def _usual(fact: NumberFact, thousandths: Fraction) -> bool:
    return fact.usual.low <= thousandths <= fact.usual.high
