"""A form that is sent twice is done once, and gets the same answer both times."""

import json
from collections.abc import Callable
from dataclasses import dataclass
from datetime import datetime
from hashlib import sha256

from sqlmodel import Session

from app.store.errors import FormReusedError
from app.store.tables import FormAnswer


@dataclass(frozen=True)
class Form:
    """A form as it was sent: its id, what it asks for, and what must be the same to call it a repeat."""

    form_id: str
    act: str
    content: object

    def __post_init__(self) -> None:
        if not self.form_id:
            raise ValueError("A form without an id can't be told from its repeat.")

    @property
    def content_sha256(self) -> str:
        return sha256(json.dumps(self.content, sort_keys=True).encode()).hexdigest()


def once(session: Session, form: Form, now: datetime, do: Callable[[], str]) -> str:
    """The answer given to this form before; else what `do` answers, remembered in the same transaction.

    Raises FormReusedError when the id was used for other content: answering that with the first answer would
    lose what was typed.
    """
    given = session.get(FormAnswer, (form.form_id, form.act))
    if given is None:
        answer = do()
        session.add(
            FormAnswer(
                form_id=form.form_id,
                act=form.act,
                content_sha256=form.content_sha256,
                answer=answer,
                saved_at=now,
            )
        )
        return answer
    if given.content_sha256 != form.content_sha256:
        raise FormReusedError
    return given.answer
