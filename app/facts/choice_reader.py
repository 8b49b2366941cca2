"""A typed choice becomes the words that are still possible: one word, or several with commas between them."""

from __future__ import annotations

import re

from app.facts.fact import ChoiceFact, Word
from app.facts.messages import WORD, NotReadError, listed
from app.facts.plain_text import SHORT, cut, plain, says_not_known

BETWEEN_WORDS = re.compile(r"[,;/|]| or ")


def read_choice(fact: ChoiceFact, typed: str) -> frozenset[str] | None:
    """The words that were typed, None for 'not known'. Raises NotReadError with the sentence to show.

    A word may stand as it is stored or as it is shown; alone, its key will do as well.
    """
    text = plain(typed)
    if says_not_known(text):
        return None
    alone = [word.word for word in fact.words if text == word.key or _is(word, text)]
    if alone:
        return frozenset(alone)
    parts = [part.strip() for part in BETWEEN_WORDS.split(text)]
    found = [word.word for part in parts for word in fact.words if _is(word, part)]
    if len(found) != len(parts):
        raise NotReadError(word_expected(fact, typed))
    return frozenset(found)


def word_expected(fact: ChoiceFact, typed: str) -> str:
    """The sentence that lists the words of the choice."""
    allowed = listed(word.word for word in fact.words)
    return WORD.format(label=fact.label, allowed=allowed, typed=cut(typed.strip(), SHORT))


def _is(word: Word, text: str) -> bool:
    return text in {word.word, plain(word.label)} or text.replace(",", ".") == word.word
