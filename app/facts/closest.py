"""Finds the name that somebody who mistyped a fact's name may have meant."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Iterator
from difflib import get_close_matches
from itertools import islice

from app.facts.messages import UNKNOWN_NAME, UNKNOWN_NAME_MEANT
from app.facts.plain_text import SHORT, cut
from app.facts.reading import FactError

# Looking for close names takes time, and a file with more wrong names than this is not meant for us.
MOST_UNKNOWN = 20


def unknown_names(names: Iterable[str], allowed: Collection[str]) -> Iterator[FactError]:
    """An error for each name that is not allowed, with the closest that is; the first twenty."""
    known = frozenset(allowed)
    for name in islice((name for name in names if name not in known), MOST_UNKNOWN):
        yield FactError("", cut(name), _message(cut(name, SHORT), allowed))


def _message(name: str, allowed: Collection[str]) -> str:
    close = get_close_matches(name, allowed, n=1)
    if not close:
        return UNKNOWN_NAME.format(name=name)
    return UNKNOWN_NAME_MEANT.format(name=name, meant=close[0])
