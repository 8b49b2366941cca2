"""Reads the body of a request as JSON."""

from __future__ import annotations

from email.message import Message

from fastapi import Request

from app.facts.json_text import NotJsonError, parse_json
from app.web.api.refused import RefusedError
from app.web.trouble import NOT_JSON

MEDIA_TYPE = "application/json"
BAD_REQUEST, WRONG_TYPE = 400, 415


async def sent_json(request: Request) -> object:
    """What was sent, parsed. Raises RefusedError: 415 for another type, 400 for what is no JSON."""
    _refuse_other_types(request.headers.get("content-type", ""))
    try:
        return parse_json(await request.body())
    except NotJsonError as fault:
        raise RefusedError(BAD_REQUEST, str(fault)) from fault


def _refuse_other_types(content_type: str) -> None:
    header = Message()
    header["Content-Type"] = content_type
    charset = header.get_param("charset", "utf-8")
    if header.get_content_type() != MEDIA_TYPE or str(charset).lower() not in {"utf-8", "utf8"}:
        raise RefusedError(WRONG_TYPE, NOT_JSON.body, headers={"Accept": MEDIA_TYPE})
