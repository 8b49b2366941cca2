"""Draws bikes for a rule, and closer readings of the same bikes."""

from __future__ import annotations

from dataclasses import replace

from hypothesis import strategies as st

from app.drawings.paper_gauge import gauge_names
from app.facts.answers import Answer, Answers, choice, number
from app.facts.fact import ChoiceFact, NumberFact
from app.facts.span import THOUSAND, Span
from app.facts.table import FACTS
from tests.demo import demo_catalogue

# Among them, gauges of no part at all.
GAUGES = ["", "arm-long.0000", *gauge_names(demo_catalogue())]


def _ends(fact: NumberFact) -> st.SearchStrategy[int]:
    step = THOUSAND if fact.whole else 1
    near_the_usual = st.integers(fact.usual.low // step, fact.usual.high // step)
    anywhere = st.integers(fact.can_be.low // step, fact.can_be.high // step)
    return st.one_of(near_the_usual, anywhere).map(lambda value: value * step)


@st.composite
def _answers_to(draw: st.DrawFn, name: str) -> Answer | None:
    fact = FACTS[name]
    if draw(st.integers(0, 4)) == 0:
        return None
    if isinstance(fact, ChoiceFact):
        words = sorted(fact.all_words)
        some = st.sets(st.sampled_from(words), min_size=1)
        one = st.sampled_from(words).map(lambda word: {word})
        gauge = draw(st.sampled_from(GAUGES)) if fact.by_gauge else ""
        return replace(choice(name, draw(st.one_of(one, one, some))), tool=gauge)
    first, second = draw(_ends(fact)), draw(_ends(fact))
    exact = draw(st.booleans())
    return number(name, Span(first, first) if exact else Span(min(first, second), max(first, second)))


@st.composite
def bikes(draw: st.DrawFn, names: tuple[str, ...]) -> Answers:
    """Answers to some of the named facts, exact, as a range, as several words, or not at all."""
    drawn = [draw(_answers_to(name)) for name in names]
    return Answers({answer.fact: answer for answer in drawn if answer is not None})


@st.composite
def closer(draw: st.DrawFn, answers: Answers, names: tuple[str, ...]) -> Answers:
    """The same bike read more closely: spans within the old ones, choices among the words still possible."""
    narrowed = []
    for name in names:
        if isinstance(FACTS[name], ChoiceFact):
            words = sorted(answers.words(name))
            kept = st.one_of(st.just(set(words)), st.sets(st.sampled_from(words), min_size=1))
            narrowed.append(replace(choice(name, draw(kept)), tool=answers.gauge(name)))
        else:
            span = answers.span(name)
            ends = sorted((draw(_within(span)), draw(_within(span))))
            narrowed.append(number(name, Span(ends[0], ends[1])))
    return Answers({answer.fact: answer for answer in narrowed})


def _within(span: Span) -> st.SearchStrategy[int]:
    return st.one_of(st.just(span.low), st.just(span.high), st.integers(span.low, span.high))
