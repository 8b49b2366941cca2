"""Errors as problem details (RFC 9457), for the JSON API and for the scripts of our own pages."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from http import HTTPStatus
from typing import Any

from starlette.requests import Request
from starlette.responses import JSONResponse

MEDIA_TYPE = "application/problem+json"
API = "/api/"


def wants_json(request: Request) -> bool:
    """Whether a program asks: under the addresses of the API, or a script that says what it takes."""
    return request.url.path.startswith(API) or "application/json" in request.headers.get("accept", "")


def problem(
    status_code: int,
    detail: str,
    *,
    errors: Sequence[Mapping[str, str]] = (),
    reference: str = "",
    headers: Mapping[str, str] | None = None,
) -> JSONResponse:
    """One problem. `errors` says for each fault its "message", and the "fact", "pointer" or "parameter"."""
    body: dict[str, Any] = {
        "type": "about:blank",
        "title": HTTPStatus(status_code).phrase,
        "status": status_code,
        "detail": detail,
    }
    if errors:
        body["errors"] = [dict(error) for error in errors]
    if reference:
        body["reference"] = reference
    return JSONResponse(body, status_code=status_code, headers=headers, media_type=MEDIA_TYPE)


def faults_of(errors: Sequence[Mapping[str, Any]]) -> list[dict[str, str]]:
    """What validation found, without the values that were sent: those may not be JSON at all."""
    return [{**_place(error), "message": str(error["msg"])} for error in errors]


def _place(error: Mapping[str, Any]) -> dict[str, str]:
    where, *path = error["loc"]
    if where != "body":
        return {"parameter": ".".join(str(step) for step in path)}
    if error["type"] == "json_invalid":
        return {"pointer": "#"}
    return {"pointer": "#" + "".join(f"/{_escaped(step)}" for step in path)}


def _escaped(step: str | int) -> str:
    """One step of a JSON pointer (RFC 6901, section 3)."""
    return str(step).replace("~", "~0").replace("/", "~1")
