"""Copies the whole database to another file and looks at the copy before calling it a backup."""

import sqlite3
from collections.abc import Iterator
from contextlib import closing, contextmanager
from hashlib import sha256
from pathlib import Path
from typing import TYPE_CHECKING

from app.store.errors import StoreError, told_in_words

if TYPE_CHECKING:
    from app.store.database import Store


def backup(store: "Store", path: Path) -> None:
    """Keep a copy of the store at path while others go on reading and writing.

    Raises StoreError if the path is taken or the copy differs from the store.
    """
    copy_database(store.path, path)


def copy_database(source: Path, target: Path) -> None:
    """Copy the database file at source to target, open the copy and compare every row."""
    if target.exists():
        raise StoreError(f"{target} is there already, and a backup never overwrites.")
    unchecked = target.with_name(target.name + ".unchecked")
    unchecked.unlink(missing_ok=True)
    try:
        with told_in_words(), _one_moment(source) as original:
            with closing(sqlite3.connect(unchecked)) as copy:
                original.backup(copy)
            compare(original, unchecked)
        unchecked.rename(target)
    finally:
        unchecked.unlink(missing_ok=True)


@contextmanager
def _one_moment(path: Path) -> Iterator[sqlite3.Connection]:
    """A connection that sees the database as it was at the first read, whoever writes meanwhile."""
    with closing(sqlite3.connect(path, isolation_level=None)) as connection:
        connection.execute("PRAGMA query_only=ON")
        connection.execute("BEGIN")
        connection.execute("SELECT count(*) FROM sqlite_master").fetchone()
        yield connection


def compare(original: sqlite3.Connection, path: Path) -> None:
    """Raise StoreError unless the database file at path is sound and holds the same rows as the original."""
    expected = _digest(original)
    try:
        # Opened anew: what is looked at is what lies on the disk.
        with closing(sqlite3.connect(path)) as copy:
            sound = copy.execute("PRAGMA integrity_check").fetchall() == [("ok",)]
            same = sound and _digest(copy) == expected
    except sqlite3.DatabaseError:
        same = False
    if not same:
        raise StoreError(f"The copy at {path} differs from the database, so it is no backup.")


def _digest(connection: sqlite3.Connection) -> str:
    digest = sha256()
    entries = connection.execute("SELECT type, name, sql FROM sqlite_master ORDER BY type, name").fetchall()
    digest.update(repr(entries).encode())
    for kind, name, _sql in entries:
        if kind != "table":
            continue
        quoted = name.replace('"', '""')
        for row in connection.execute(f'SELECT * FROM "{quoted}"'):  # noqa: S608 - a table cannot be a parameter
            digest.update(repr(row).encode())
    return digest.hexdigest()
