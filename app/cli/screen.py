"""Tables on the screen that show what files say as it stands, whatever it is."""

from __future__ import annotations

from collections.abc import Iterable
from typing import TextIO
from unicodedata import category

from rich.console import Console
from rich.table import Column, Table


def screen(out: TextIO) -> Console:
    """A screen on which neither [these] nor :this: are marks of ours."""
    return Console(file=out, markup=False, emoji=False, highlight=False)


def table(titles: Iterable[str], rows: Iterable[Iterable[str]]) -> Table:
    """A table that folds long words, since the end of a path is what tells files apart."""
    made = Table(*(Column(title, overflow="fold") for title in titles))
    for row in rows:
        made.add_row(*map(_without_controls, row))
    return made


def _without_controls(text: str) -> str:
    # A terminal obeys control characters, and these come out of somebody's file.
    return "".join("\ufffd" if category(each) == "Cc" and each != "\n" else each for each in text)
