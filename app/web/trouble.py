"""What is said when things go wrong: a heading and a sentence or two for each status."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from http import HTTPStatus
from types import MappingProxyType


@dataclass(frozen=True, slots=True)
class Trouble:
    """Heading and body of an error page, and whether the page offers to open a check by its code."""

    heading: str
    body: str
    offers_code: bool = False


TROUBLES: Mapping[int, Trouble] = MappingProxyType(
    {
        400: Trouble("We couldn't read what was sent", "Go back, check what you typed and send it again."),
        403: Trouble("You can't do this with your role", "Ask the owner to let you publish parts."),
        404: Trouble(
            "This page isn't here", "Check the address, or open a check by its code.", offers_code=True
        ),
        405: Trouble("This page can't do that", "Go back and use the buttons on the page."),
        409: Trouble("Two people changed the same thing", "Go back, look at both values and choose one."),
        413: Trouble("This file is too big", "The most is 2 MB."),
        415: Trouble("We can't read this kind of file", "Send text in UTF-8, as CSV, YAML or JSON."),
        421: Trouble("This shop has another address", "Open the check under the shop's own address."),
        422: Trouble(
            "There is a problem",
            "Part of the address or of what was sent can't be read. Check it, or open a check by its code.",
            offers_code=True,
        ),
        429: Trouble("Too many tries", "Wait 30 seconds, then try again."),
        500: Trouble("Something broke on our side", "Try again, or ask the shop."),
        503: Trouble(
            "We're saving nothing right now",
            "You can read and print. Entering is back when the shop has freed disk space.",
        ),
    }
)
FROM_ELSEWHERE = Trouble(
    "This was sent from somewhere else", "Nothing was changed. Open the page here and send it again."
)
NOT_JSON = Trouble(
    "We can't read this kind of file", "Send JSON in UTF-8, with the header Content-Type: application/json."
)
OTHERWISE = Trouble("This didn't work", "Go back and try again, or ask the shop.")
MEGABYTE = 1_000_000
# Frameworks give a status its phrase as detail; two phrases are newer than some Pythons.
BARE_PHRASES = {status.phrase for status in HTTPStatus} | {"Content Too Large", "Unprocessable Content"}


def trouble_of(status_code: int) -> Trouble:
    """What to say about a status; a general sentence for one that we never send ourselves."""
    return TROUBLES.get(status_code, OTHERWISE)


def in_detail(status_code: int, detail: str) -> Trouble:
    """The trouble of a status, with a sentence of its own where one was given instead of the bare phrase."""
    trouble = trouble_of(status_code)
    if not detail or detail in BARE_PHRASES:
        return trouble
    return replace(trouble, body=detail)


def too_big(most_bytes: int, sent_bytes: int) -> Trouble:
    """A body over the limit, both sizes in megabytes."""
    body = f"The most is {most_bytes / MEGABYTE:.0f} MB. Yours is {sent_bytes / MEGABYTE:.1f} MB."
    return replace(TROUBLES[413], body=body)


def too_many_tries(wait_s: str) -> Trouble:
    """Too many tries, with the seconds to wait as the answer's Retry-After says them."""
    return replace(TROUBLES[429], body=f"Wait {wait_s} seconds, then try again.")


def broken(reference: str, saved_until: str) -> Trouble:
    """A crash: its reference, and up to when answers are saved where that is known ("10:42")."""
    body = f"Try again, or note reference {reference} and ask the shop."
    return replace(
        TROUBLES[500], body=f"Your answers are saved up to {saved_until}. {body}" if saved_until else body
    )
