"""Reads what a program sends to have a build saved: the facts, the job it belongs to and who issues it."""

from __future__ import annotations

import re
import secrets
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from unicodedata import category

from fastapi import Request

from app.facts.answers import Answers
from app.facts.json_reader import read_json
from app.facts.json_values import shown_value
from app.facts.plain_text import SHORT, cut
from app.web.api.documented import KEY
from app.web.api.refused import UNREADABLE, Fault, RefusedError, refuse_unread

KEY_SHAPE = re.compile(r"[!-~]{1,200}")
WRONG_KEY = "An Idempotency-Key is 1 to 200 visible ASCII characters without spaces."

LINES = ("job", "issued_by")
LONGEST = 60
# Control characters, and the two that part lines and paragraphs.
BREAKS = frozenset({"Cc", "Zl", "Zp"})
WRONG_LINE = "{name} must be one line of text, {most} characters at most, or null."


@dataclass(frozen=True, slots=True)
class Order:
    """A build to be saved; `job` is None where none was given."""

    answers: Answers
    job: str | None
    issued_by: str


def read_order(sent: object) -> Order:
    """The build that was sent. Raises RefusedError with everything in it that can't be read."""
    facts, lines = _apart(sent)
    reading = read_json(facts)
    refuse_unread(reading.errors, _wrong_lines(lines))
    job, issued_by = (str(lines.get(name) or "").strip() for name in LINES)
    return Order(reading.answers, job or None, issued_by)


def read_key(request: Request) -> str:
    """The key that makes a repeat of this request harmless; a new one where none was sent."""
    sent = request.headers.getlist(KEY)
    if not sent:
        return secrets.token_urlsafe(16)
    if len(sent) > 1 or not KEY_SHAPE.fullmatch(sent[0]):
        shown = cut(", ".join(sent), SHORT)
        fault = {"parameter": KEY, "value": shown, "message": WRONG_KEY}
        raise RefusedError(UNREADABLE, WRONG_KEY, [fault])
    return sent[0]


def _apart(sent: object) -> tuple[object, Mapping[str, object]]:
    """The facts, and the lines of text beside them; what is no object is left to the reader of facts."""
    if not isinstance(sent, Mapping):
        return sent, {}
    facts = {name: each for name, each in sent.items() if name not in LINES}
    return facts, {name: sent[name] for name in LINES if name in sent}


def _wrong_lines(lines: Mapping[str, object]) -> Iterator[Fault]:
    for name, line in lines.items():
        if line is not None and not _is_line(line):
            message = WRONG_LINE.format(name=name, most=LONGEST)
            yield {"value": cut(shown_value(line)), "message": message, "parameter": name}


def _is_line(line: object) -> bool:
    return isinstance(line, str) and len(line) <= LONGEST and not BREAKS & set(map(category, line))
