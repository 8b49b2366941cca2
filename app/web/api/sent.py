"""Reads the body of a request: JSON in UTF-8, with no name twice in one object and no half characters."""

from __future__ import annotations

import json
from collections.abc import Sequence
from email.message import Message
from typing import Any

from fastapi import Request

from app.facts.plain_text import SHORT, cut
from app.web.api.refused import RefusedError
from app.web.trouble import NOT_JSON as SEND_JSON

MEDIA_TYPE = "application/json"
BAD_REQUEST, WRONG_TYPE = 400, 415

NOT_UTF_8 = "The body isn't UTF-8: byte {place} can't be read."
NOT_JSON = "The body isn't JSON: line {line}, column {column}: {why}."
TOO_LONG_NUMBER = "The body isn't JSON that can be read: a whole number has too many digits."
TOO_DEEP = "The body isn't JSON that can be read: it is nested too deeply."
HALF_CHARACTER = "The body holds half a character, such as \\ud800 without its other half."
TWICE = "The name {name} stands twice in one object. Keep one."


async def sent_json(request: Request) -> object:
    """What was sent, parsed. Raises RefusedError: 415 for another type, 400 for what is no JSON.

    NaN and Infinity pass, so that whoever reads the facts can name the one that is wrong.
    """
    _refuse_other_types(request.headers.get("content-type", ""))
    return parsed(await request.body())


def parsed(body: bytes) -> object:
    """The JSON in a body. Raises RefusedError, as RFC 7493 asks of those who send."""
    try:
        data = json.loads(body.decode("utf-8-sig"), object_pairs_hook=_without_repeats)
        json.dumps(data, ensure_ascii=False).encode()
    except UnicodeDecodeError as fault:
        raise RefusedError(BAD_REQUEST, NOT_UTF_8.format(place=fault.start + 1)) from fault
    except UnicodeEncodeError as fault:
        raise RefusedError(BAD_REQUEST, HALF_CHARACTER) from fault
    except json.JSONDecodeError as fault:
        why = fault.msg[0].lower() + fault.msg[1:]
        raise RefusedError(
            BAD_REQUEST, NOT_JSON.format(line=fault.lineno, column=fault.colno, why=why)
        ) from fault
    except RecursionError as fault:
        raise RefusedError(BAD_REQUEST, TOO_DEEP) from fault
    except ValueError as fault:
        raise RefusedError(BAD_REQUEST, TOO_LONG_NUMBER) from fault
    return data


def _refuse_other_types(content_type: str) -> None:
    header = Message()
    header["Content-Type"] = content_type
    charset = header.get_param("charset", "utf-8")
    if header.get_content_type() != MEDIA_TYPE or str(charset).lower() not in {"utf-8", "utf8"}:
        raise RefusedError(WRONG_TYPE, SEND_JSON.body, headers={"Accept": MEDIA_TYPE})


def _without_repeats(pairs: Sequence[tuple[str, Any]]) -> dict[str, Any]:
    """One object; a name twice would silently lose the first value."""
    found: dict[str, Any] = {}
    for name, value in pairs:
        if name in found:
            shown = cut(name, SHORT).encode(errors="replace").decode()
            raise RefusedError(BAD_REQUEST, TWICE.format(name=shown))
        found[name] = value
    return found
