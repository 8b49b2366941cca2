"""Answers that a client may keep and ask about: the same content is answered with 304 and no body."""

from __future__ import annotations

import hashlib

from fastapi import Request
from starlette.responses import Response

MEDIA_TYPE = "application/json"
NOT_MODIFIED = 304
# To be kept, and asked about each time; what belongs to one build is for nobody in between to keep.
FOR_ALL, FOR_ONE = "no-cache", "private, no-cache"


def revalidated(request: Request, body: bytes, keep: str = FOR_ALL, media_type: str = MEDIA_TYPE) -> Response:
    """This body with its ETag, or 304 where the client has it already."""
    # Weak (RFC 9110, section 8.8.1), because the same tag goes with the body as it is and compressed.
    tag = f'W/"{hashlib.sha256(body).hexdigest()[:32]}"'
    headers = {"ETag": tag, "Cache-Control": keep}
    if _has(request.headers.getlist("if-none-match"), tag):
        return Response(status_code=NOT_MODIFIED, headers=headers)
    return Response(body, media_type=media_type, headers=headers)


def _has(fields: list[str], tag: str) -> bool:
    named = [each.strip().removeprefix("W/") for field in fields for each in field.split(",")]
    return tag.removeprefix("W/") in named or "*" in named
