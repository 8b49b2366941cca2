"""Keeps the text of each catalogue that judged a build, so that old builds keep theirs, and numbers it."""

from collections.abc import Mapping
from datetime import datetime

from sqlmodel import Session, col, select

from app.store.database import Store
from app.store.tables import CatalogueText


def keep(store: Store, revision: str, text_by_file: Mapping[str, str]) -> int:
    """The running number of the catalogue with this revision; its text is kept if it is new."""
    known = number(store, revision)
    if known is not None:
        return known
    with store.writing() as session:
        return keep_within(session, revision, text_by_file, store.now())


def number(store: Store, revision: str) -> int | None:
    """The running number of a catalogue that was kept, or None."""
    with store.reading() as session:
        return session.exec(select(CatalogueText.number).where(CatalogueText.revision == revision)).first()


def text_by_file(store: Store, number: int) -> Mapping[str, str] | None:
    """The files of the catalogue with this running number, or None."""
    with store.reading() as session:
        return session.exec(
            select(col(CatalogueText.text_by_file)).where(CatalogueText.number == number)
        ).first()


def keep_within(session: Session, revision: str, text_by_file: Mapping[str, str], now: datetime) -> int:
    """As keep, in a transaction that is under way."""
    kept = session.exec(select(CatalogueText).where(CatalogueText.revision == revision)).first()
    if kept is None:
        kept = CatalogueText(revision=revision, text_by_file=dict(text_by_file), kept_at=now)
        session.add(kept)
        session.flush()
    return kept.number
