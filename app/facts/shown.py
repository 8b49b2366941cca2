"""How an answer is shown beside its field: '134.6 mm ± 1.0', '134 to 136 mm', 'Steel', 'Not known'."""

from __future__ import annotations

from decimal import ROUND_CEILING, ROUND_FLOOR, ROUND_HALF_EVEN, Decimal

from app.facts.answers import Answer
from app.facts.fact import ChoiceFact, Fact, NumberFact
from app.facts.messages import NOT_KNOWN, OR, PLUS_MINUS, RANGE, THIN, NotReadError
from app.facts.number_grammar import Between, written
from app.facts.span import Span, in_unit


def what_we_read(fact: Fact, answer: Answer) -> str:
    """An answer in words and numbers, as a person would say it back."""
    if isinstance(fact, ChoiceFact):
        return NOT_KNOWN if answer.words is None else _labels(fact, answer.words)
    if answer.span is None:
        return NOT_KNOWN
    return _range(fact, answer.span) if _is_range(fact, answer) else reading(fact, answer.span)


def reading(fact: NumberFact, span: Span) -> str:
    """A span as its middle and its uncertainty, the ± rounded up."""
    middle, half = in_unit(span.low + span.high) / 2, in_unit(span.width) / 2
    if not half:
        return with_unit(fact, plain_number(span.low))
    fits = _fits(middle, fact.decimals) and _fits(half, fact.decimals)
    places = fact.decimals if fits or not _fits(middle, fact.decimals + 1) else fact.decimals + 1
    value = with_unit(fact, f"{_at(middle, places, ROUND_HALF_EVEN):f}")
    return PLUS_MINUS.format(value=value, half=f"{_at(half, places, ROUND_CEILING):f}")


def plain_number(thousandths: int) -> str:
    """Thousandths in the unit with as few places as they need: 134600 is 134.6."""
    return f"{in_unit(thousandths):f}"


def with_unit(fact: NumberFact, text: str) -> str:
    """A number with its unit behind a thin no-break space; a degree sign stands close."""
    gap = "" if fact.unit in {"", "°"} else THIN
    return f"{text}{gap}{fact.unit}"


def _labels(fact: ChoiceFact, words: frozenset[str]) -> str:
    return OR.join(word.label for word in fact.words if word.word in words)


def _range(fact: NumberFact, span: Span) -> str:
    if span.is_exact:
        return with_unit(fact, plain_number(span.low))
    low, high = in_unit(span.low), in_unit(span.high)
    most = fact.decimals + 1
    places = next((each for each in range(most) if _fits(low, each) and _fits(high, each)), most)
    low, high = _at(low, places, ROUND_FLOOR), _at(high, places, ROUND_CEILING)
    return with_unit(fact, RANGE.format(low=f"{low:f}", high=f"{high:f}"))


def _is_range(fact: NumberFact, answer: Answer) -> bool:
    span = answer.span
    if span is None or span.low == fact.can_be.low or span.high == fact.can_be.high:
        return True
    try:
        return isinstance(written(fact, answer.typed), Between)
    except NotReadError:
        return False


def _fits(value: Decimal, places: int) -> bool:
    return value == _at(value, places, ROUND_HALF_EVEN)


def _at(value: Decimal, places: int, rounding: str) -> Decimal:
    return value.quantize(Decimal(1).scaleb(-places), rounding=rounding)
