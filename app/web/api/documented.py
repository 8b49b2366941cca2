"""What a route says of itself in the API's description: what it takes, what it answers, how it refuses."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType
from typing import Any, TypeAlias

from app.web.problem import MEDIA_TYPE as PROBLEM

JSON = "application/json"
SCHEMAS = "#/components/schemas/"
Described: TypeAlias = dict[str, Any]
Answers: TypeAlias = dict[int | str, Described]

REFUSALS: Mapping[int, str] = MappingProxyType(
    {
        400: "What was sent isn't JSON in UTF-8, or holds one name twice.",
        403: "The request carries a cookie and came from another site.",
        404: "There is no build with this code, or a character of the code is wrong.",
        409: "This Idempotency-Key was used for another build before.",
        413: "More than 2 MB were sent.",
        415: "The header Content-Type isn't application/json.",
        422: "Facts that can't be read, or that can't both be: `errors` names each.",
        503: "The shop has no catalogue yet, or the database can't be written to; nothing was saved.",
    }
)
# What anything that takes a body may refuse.
OF_BODY = (400, 403, 413, 415, 422)
TAG = {
    "description": "Send it back as If-None-Match to hear whether anything changed.",
    "schema": {"type": "string"},
}
IF_NONE_MATCH = {
    "name": "If-None-Match",
    "in": "header",
    "required": False,
    "description": "The ETag of the answer that you have; you get 304 while it still holds.",
    "schema": {"type": "string"},
}
ASKED_AGAIN = {"parameters": [IF_NONE_MATCH]}
KEY = "Idempotency-Key"
TEXT = {"type": "string"}
REPEATED = {
    "parameters": [
        {
            "name": KEY,
            "in": "header",
            "required": False,
            "description": "1 to 200 visible characters of your own choice, such as a random UUID: repeated "
            "under the same key, a request is done once and answered the same. Without it we make one up.",
            "schema": {"type": "string", "pattern": "^[!-~]{1,200}$"},
        }
    ]
}
SAVED = {
    "Location": {"description": "The address of the build.", "schema": TEXT},
    KEY: {"description": "The key that was sent, or the one that was made up.", "schema": TEXT},
}


def ref(name: str) -> Described:
    """Points at a schema of the description."""
    return {"$ref": SCHEMAS + name}


def answered(
    shape: str,
    told: str,
    *,
    status: int = 200,
    headers: Described | None = None,
    refusals: tuple[int, ...] = (),
) -> Answers:
    """What a route answers: the shape of the JSON, one sentence on it, and the statuses of its refusals."""
    found: Answers = {status: {"description": told, "content": {JSON: {"schema": ref(shape)}}}}
    if headers:
        found[status]["headers"] = headers
    for refusal in refusals:
        found[refusal] = _refused(REFUSALS[refusal])
    found["default"] = _refused(
        "Any other refusal, such as 405 for another method, or a crash with its reference."
    )
    return found


def _refused(told: str) -> Described:
    return {"description": told, "content": {PROBLEM: {"schema": ref("Problem")}}}


def kept(shape: str, told: str, refusals: tuple[int, ...] = ()) -> Answers:
    """As answered, for what a client may keep: with an ETag, and 304 while nothing has changed."""
    found = answered(shape, told, headers={"ETag": TAG}, refusals=refusals)
    found[304] = {"description": "What you have is still right.", "headers": {"ETag": TAG}}
    return found


def taken(shape: str) -> Described:
    """The JSON that a route takes."""
    return {"requestBody": {"required": True, "content": {JSON: {"schema": ref(shape)}}}}
