"""Texts of the facts are short, plain and polite without begging."""

from __future__ import annotations

import re

import pytest

from app.facts import messages
from app.facts.fact import ChoiceFact, Fact
from app.facts.table import FACTS

NEVER = re.compile(
    r"\b(please|sorry|invalid|valid|illegal|forbidden|oops|error|field|input|required|submit|click|simply|just)\b|!",
    re.IGNORECASE,
)
SENTENCES = {name: text for name, text in vars(messages).items() if name.isupper() and isinstance(text, str)}
LONGEST_SENTENCE_IN_WORDS = 25


def texts_of(fact: Fact) -> list[str]:
    labels = [word.label for word in fact.words] if isinstance(fact, ChoiceFact) else []
    return [fact.label, fact.question, fact.how_measured, *labels]


@pytest.mark.parametrize("name", SENTENCES)
def test_a_message_uses_no_word_that_blames_or_begs(name: str) -> None:
    assert not NEVER.search(SENTENCES[name])


@pytest.mark.parametrize("fact", FACTS.values(), ids=lambda fact: fact.name)
def test_a_fact_is_asked_in_short_plain_sentences(fact: Fact) -> None:
    for text in texts_of(fact):
        assert not NEVER.search(text)
        assert len(text.split()) <= LONGEST_SENTENCE_IN_WORDS
