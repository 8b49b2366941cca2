"""What the API can't take, raised where it is found and answered as problem details."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from typing import TypeAlias

from fastapi import Request
from starlette.responses import Response

from app.facts.reading import FactError
from app.web.problem import problem

Fault: TypeAlias = Mapping[str, str]

UNREADABLE = 422
FACTS_UNREAD = "Some of this can't be read: each of `errors` says what is allowed."


class RefusedError(Exception):
    """A request that is turned away, with one sentence and the faults one by one.

    headers  what the answer carries beside the problem
    """

    def __init__(
        self,
        status_code: int,
        detail: str,
        errors: Iterable[Fault] = (),
        headers: Mapping[str, str] | None = None,
    ) -> None:
        super().__init__(detail)
        self.status_code = status_code
        self.detail = detail
        self.errors = tuple(errors)
        self.headers = headers


async def answer_refused(_request: Request, error: Exception) -> Response:
    """The problem details of a request that was turned away."""
    assert isinstance(error, RefusedError)  # noqa: S101 - registered for this class; narrows the type
    return problem(error.status_code, error.detail, errors=error.errors, headers=error.headers)


def refuse_unread(errors: Iterable[FactError], more: Iterable[Fault] = ()) -> None:
    """Raise a RefusedError with all of these, if there is one."""
    faults = (*faults_of_facts(errors), *more)
    if faults:
        raise RefusedError(UNREADABLE, FACTS_UNREAD, faults)


def faults_of_facts(errors: Iterable[FactError]) -> tuple[Fault, ...]:
    """Errors of reading as a problem lists them."""
    return tuple(map(_of_fact, errors))


def _of_fact(error: FactError) -> Fault:
    """One entry that can't stand. `also` names the second fact where two can't both be."""
    fault = {"fact": error.fact, "value": error.typed, "message": error.message}
    return {**fault, "also": error.also} if error.also else fault
