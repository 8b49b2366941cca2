"""Parses JSON as strictly as RFC 7493 asks: UTF-8, no name twice in one object, no half characters."""

from __future__ import annotations

import json
from collections.abc import Sequence

from app.facts.plain_text import SHORT, cut

NOT_UTF_8 = "This isn't UTF-8 text: byte {place} can't be read."
NOT_JSON = "This isn't JSON: line {line}, column {column}: {why}."
TOO_LONG_NUMBER = "This JSON can't be read: a whole number in it has too many digits."
TOO_DEEP = "This JSON can't be read: it is nested too deeply."
HALF_CHARACTER = "This JSON holds half a character, such as \\ud800 without its other half."
TWICE = "The name {name} stands twice in one object. Keep one."


class NotJsonError(ValueError):
    """What can't be read as JSON; its text is one sentence that says where and why."""


def parse_json(body: bytes) -> object:
    """The value that a JSON text stands for. Raises NotJsonError.

    NaN and Infinity pass, so that whoever reads the facts can name the one that is wrong.
    """
    try:
        data: object = json.loads(body.decode("utf-8-sig"), object_pairs_hook=_without_repeats)
        json.dumps(data, ensure_ascii=False).encode()
    except UnicodeDecodeError as fault:
        raise NotJsonError(NOT_UTF_8.format(place=fault.start + 1)) from fault
    except UnicodeEncodeError as fault:
        raise NotJsonError(HALF_CHARACTER) from fault
    except json.JSONDecodeError as fault:
        why = fault.msg[0].lower() + fault.msg[1:]
        raise NotJsonError(NOT_JSON.format(line=fault.lineno, column=fault.colno, why=why)) from fault
    except RecursionError as fault:
        raise NotJsonError(TOO_DEEP) from fault
    except NotJsonError:
        raise
    except ValueError as fault:
        raise NotJsonError(TOO_LONG_NUMBER) from fault
    return data


def _without_repeats(pairs: Sequence[tuple[str, object]]) -> dict[str, object]:
    """One object; a name that stands twice would silently lose its first value."""
    found: dict[str, object] = {}
    for name, value in pairs:
        if name in found:
            shown = cut(name, SHORT).encode(errors="replace").decode()
            raise NotJsonError(TWICE.format(name=shown))
        found[name] = value
    return found
