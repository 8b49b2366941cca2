"""One fact as it stands on a page: what was typed, how it was read and what it does to the verdict."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Entry:
    """What the field macros show beside a fact. Every text is ready to be shown; empty means nothing to show.

    typed      the text as it was typed; for a choice the word, and "?" for not known
    tool       name of the tool that was chosen
    reading    what we read, such as "134.6 mm ± 0.3" or "Not known"
    state      the gauge mark's state (fit, care, close, open, gap, no, skip), or empty
    words      the words beside the mark
    error      one sentence that says what to enter
    note       one sentence to know, such as an unusual value
    can_undo   whether what is typed differs from what is stored
    """

    typed: str = ""
    tool: str = ""
    reading: str = ""
    state: str = ""
    words: str = ""
    error: str = ""
    note: str = ""
    can_undo: bool = False


UNTOUCHED = Entry()
