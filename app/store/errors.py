"""What the store says when it can't do what was asked, each in a sentence that a person can act on."""

import sqlite3
from collections.abc import Iterator
from contextlib import contextmanager

from sqlalchemy.exc import DBAPIError


class StoreError(Exception):
    """The store can't do it now, or not with this database; nothing was changed."""


class UnknownBuildError(StoreError):
    """No build has this code."""

    def __init__(self, code: str) -> None:
        super().__init__(f"We have no check with the code {code}.")


class FormReusedError(StoreError):
    """A form came back under an id that was already used, but with other content, so it isn't a repeat."""

    def __init__(self) -> None:
        super().__init__(
            "This form was already sent with other answers. Load the page again and send it once more."
        )


_SENTENCES = {
    sqlite3.SQLITE_BUSY: "Another program keeps the database busy, so nothing was saved.",
    sqlite3.SQLITE_CANTOPEN: "The database can't be opened: look at its folder and who may write there.",
    sqlite3.SQLITE_CORRUPT: "The database file is damaged: restore the last backup.",
    sqlite3.SQLITE_FULL: "The disk is full, so nothing was saved.",
    sqlite3.SQLITE_IOERR: "The disk can't read or write the database, so nothing was saved.",
    sqlite3.SQLITE_NOTADB: "This file is no database of ours: choose another file for the database.",
    sqlite3.SQLITE_PERM: "The database can't be written to: its file or folder belongs to someone else.",
    sqlite3.SQLITE_READONLY: "The database can't be written to: its file or folder is read-only.",
}


@contextmanager
def told_in_words() -> Iterator[None]:
    """Turn what a disk or another program does to the database into a StoreError; a bug of ours stays one."""
    try:
        yield
    except DBAPIError as error:
        sentence = _sentence(error.orig)
        if sentence is None:
            raise
        raise StoreError(sentence) from error
    except sqlite3.Error as error:
        sentence = _sentence(error)
        if sentence is None:
            raise
        raise StoreError(sentence) from error


def kind_of_error(error: BaseException | None) -> int | None:
    """SQLite's number for the kind of an error, like sqlite3.SQLITE_FULL; None where it isn't SQLite's."""
    extended_code = getattr(error, "sqlite_errorcode", None)
    # The low byte is the kind; the rest says which of several causes.
    return None if extended_code is None else extended_code & 0xFF


def _sentence(error: BaseException | None) -> str | None:
    kind = kind_of_error(error)
    return None if kind is None else _SENTENCES.get(kind)
