"""A posted form as plain texts, whether a page or a script sent it."""

from __future__ import annotations

import secrets
from collections.abc import Mapping
from dataclasses import dataclass
from typing import Annotated

from fastapi import Depends, Request

from app.web.delivery import LARGEST_BODY
from app.web.problem import wants_json

MOST_FIELDS = 400
LONGEST_FORM_ID = 64


@dataclass(frozen=True, slots=True)
class Posted:
    """The texts of a form by name, and whether a script waits for JSON instead of a page."""

    fields: Mapping[str, str]
    wants_json: bool = False

    def text(self, name: str) -> str:
        """What stands under a name; empty where the form has no such name."""
        return self.fields.get(name, "")

    @property
    def form_id(self) -> str:
        """The id that tells this form from its repeat. One made by hand without an id gets a new one."""
        return self.text("form_id")[:LONGEST_FORM_ID] or new_form_id()


def new_form_id() -> str:
    """An id for a form that is about to be shown: random, and always of the same length."""
    return secrets.token_hex(16)


async def posted_form(request: Request) -> Posted:
    """The form of this request."""
    async with request.form(max_files=0, max_fields=MOST_FIELDS, max_part_size=LARGEST_BODY) as form:
        texts = {name: value for name, value in form.items() if isinstance(value, str)}
    return Posted(texts, wants_json(request))


PostedForm = Annotated[Posted, Depends(posted_form)]
