"""Error pages, and problem details for programs: what a browser or a program is told when a request fails."""

from __future__ import annotations

import secrets
from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType
from typing import ClassVar

from fastapi import FastAPI, Request
from fastapi.exceptions import RequestValidationError
from starlette.exceptions import HTTPException
from starlette.responses import Response
from starlette.types import Scope

from app.store.codes import CodeError
from app.store.errors import FormReusedError, StoreError, UnknownBuildError
from app.web.page import Page
from app.web.problem import faults_of, problem, wants_json
from app.web.site import Site
from app.web.trouble import Trouble, broken, in_detail, too_many_tries, trouble_of

NO_SUCH_METHOD = 405
UNREADABLE = 422
CRASH = 500
# What the store and its codes raise, and what that is to a browser; each carries a sentence of its own.
STATUS_OF: Mapping[type[Exception], int] = MappingProxyType(
    {CodeError: 404, UnknownBuildError: 404, FormReusedError: 409, StoreError: 503}
)
TOO_MANY = 429


@dataclass(frozen=True)
class ErrorPage(Page):
    """A page that says what went wrong and what to do now."""

    template: ClassVar[str] = "pages/error.html"

    trouble: Trouble

    @property
    def heading(self) -> str:
        return self.trouble.heading


def refusal(scope: Scope, status_code: int, trouble: Trouble | None = None) -> Response:
    """The answer to a request that is turned away before any route sees it."""
    return _answer(Request(scope), status_code, trouble or trouble_of(status_code))


def answer_errors(app: FastAPI) -> None:
    """Give an application these answers for everything that is raised in it."""
    app.add_exception_handler(HTTPException, _refused)
    app.add_exception_handler(RequestValidationError, _unreadable)
    app.add_exception_handler(Exception, _crashed)
    for kind in STATUS_OF:
        app.add_exception_handler(kind, _told_by_the_store)


def _answer(
    request: Request, status_code: int, trouble: Trouble, headers: Mapping[str, str] | None = None
) -> Response:
    if wants_json(request):
        return problem(status_code, trouble.body, headers=headers)
    site: Site = request.app.state.site
    return site.show(ErrorPage(trouble), status_code=status_code, headers=headers)


async def _refused(request: Request, error: Exception) -> Response:
    assert isinstance(error, HTTPException)  # noqa: S101 - registered for this class; narrows the type
    headers = dict(error.headers or {})
    if "GET" in headers.get("Allow", ""):
        headers["Allow"] += ", HEAD"
    if error.status_code == NO_SUCH_METHOD and "Allow" in headers and wants_json(request):
        return problem(NO_SUCH_METHOD, f"This address takes {headers['Allow']} only.", headers=headers)
    if error.status_code == TOO_MANY and "Retry-After" in headers:
        return _answer(request, TOO_MANY, too_many_tries(headers["Retry-After"]), headers)
    return _answer(request, error.status_code, in_detail(error.status_code, str(error.detail)), headers)


async def _unreadable(request: Request, error: Exception) -> Response:
    assert isinstance(error, RequestValidationError)  # noqa: S101 - registered for this class; narrows the type
    trouble = trouble_of(UNREADABLE)
    if wants_json(request):
        return problem(UNREADABLE, trouble.heading, errors=faults_of(error.errors()))
    return _answer(request, UNREADABLE, trouble)


async def _told_by_the_store(request: Request, error: Exception) -> Response:
    status_code = next(STATUS_OF[kind] for kind in type(error).__mro__ if kind in STATUS_OF)
    return _answer(request, status_code, in_detail(status_code, str(error)))


async def _crashed(request: Request, error: Exception) -> Response:
    reference = secrets.token_hex(2).upper()
    # The server logs the traceback, and this line with it.
    error.add_note(f"Reference {reference}: {request.method} {request.url.path!r}")
    trouble = broken(reference, getattr(request.state, "saved_until", ""))
    if wants_json(request):
        return problem(CRASH, trouble.body, reference=reference)
    return _answer(request, CRASH, trouble)
