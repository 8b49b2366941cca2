"""The database of the shop: one writer at a time, and readers that never wait for it.

What is peculiar to SQLite stands here, in backup.py and in the triggers of the migrations.
"""

import json
import sqlite3
from collections.abc import Iterator
from contextlib import ExitStack, contextmanager
from datetime import datetime
from functools import partial
from pathlib import Path
from tempfile import TemporaryDirectory
from threading import Lock
from time import monotonic, sleep

from alembic.config import Config
from sqlalchemy import URL, Connection, Engine, create_engine, event, make_url
from sqlalchemy.exc import ArgumentError
from sqlmodel import Session

from app.store.backup import copy_database
from app.store.errors import StoreError, kind_of_error, told_in_words
from app.store.migrate import bring_up_to_date
from app.store.times import Clock, utc_now

_BUSY_MS = 5000
_BUSY_PAUSE_S = 0.01
_DURABLE = (f"busy_timeout={_BUSY_MS}", "synchronous=FULL")
_WRITER = (*_DURABLE, "foreign_keys=ON")
_READER = (*_WRITER, "query_only=ON")
# A change of a table may rebuild it: that must not delete the rows that point at it, nor stop at a trigger of
# another table that names it while it is away.
_MIGRATION = (*_DURABLE, "foreign_keys=OFF", "legacy_alter_table=ON")

# Takes the right to write at once: a transaction that reads first and writes later would lose updates.
_TO_WRITE = "BEGIN IMMEDIATE"
# All reads of one transaction see the same moment.
_TO_READ = "BEGIN"


class Store:
    """The database at an address like `sqlite:///var/builds.db`; `sqlite://` is one that is gone at close.

    The tables are there after migrate(). Raises StoreError if the database can't be opened.
    """

    def __init__(self, url: str, clock: Clock = utc_now) -> None:
        self._left_at_close = ExitStack()
        self._clock = clock
        self._one_writer = Lock()
        self.path = self._file_of(url)
        self._writer = _engine(self.path, _WRITER, _TO_WRITE)
        self._reader = _engine(self.path, _READER, _TO_READ)

    def now(self) -> datetime:
        """The time by the clock that the store was given."""
        return self._clock()

    def migrate(self, config: Config | None = None) -> Path | None:
        """Make or change the tables to what this version needs; the path of the backup if there was data.

        config  alembic's, where the migrations aren't those of pyproject.toml

        All of it happens or nothing. Raises StoreError for a database that is newer or not ours.
        """
        with self.migrating() as connection:
            return bring_up_to_date(connection, self._keep_a_copy, config)

    @contextmanager
    def writing(self) -> Iterator[Session]:
        """A session that alone may write; kept on disk when the block ends, undone on an error."""
        with told_in_words(), self._one_writer, Session(self._writer) as session, session.begin():
            yield session

    @contextmanager
    def reading(self) -> Iterator[Session]:
        """A session that sees one moment and can't write."""
        with told_in_words(), Session(self._reader) as session:
            yield session

    @contextmanager
    def migrating(self) -> Iterator[Connection]:
        """A connection that may rebuild tables; every reference is looked at before it is kept."""
        engine = _engine(self.path, _MIGRATION, _TO_WRITE)
        try:
            with told_in_words(), self._one_writer, engine.begin() as connection:
                yield connection
                _refuse_broken_references(connection)
        finally:
            engine.dispose()

    def close(self) -> None:
        """Give back every connection; a store that was only for now is gone."""
        self._writer.dispose()
        self._reader.dispose()
        self._left_at_close.close()

    def _file_of(self, address: str) -> Path:
        try:
            url = make_url(address)
        except ArgumentError as error:
            raise StoreError(f"{address!r} is no address of a database: use sqlite:///FILE.") from error
        if url.get_backend_name() != "sqlite":
            raise StoreError(
                f"Builds are kept in SQLite, not in {url.get_backend_name()}: use sqlite:///FILE."
            )
        if url.database in {None, "", ":memory:"}:
            # A database in memory belongs to one connection; writer and readers need one that they share.
            folder = self._left_at_close.enter_context(TemporaryDirectory(prefix="axlewright-"))
            return Path(folder) / "builds.db"
        path = Path(str(url.database)).absolute()
        try:
            path.parent.mkdir(parents=True, exist_ok=True)
        except OSError as error:
            raise StoreError(
                f"The folder {path.parent} for the database can't be made: {error.strerror}."
            ) from error
        return path

    def _keep_a_copy(self, revision: str) -> Path:
        moment = self.now().strftime("%Y%m%dT%H%M%S")
        kept = self.path.with_name(
            f"{self.path.stem}.before-update-from-{revision}-{moment}{self.path.suffix}"
        )
        copy_database(self.path, kept)
        return kept


def _engine(path: Path, pragmas: tuple[str, ...], begin: str) -> Engine:
    engine = create_engine(
        URL.create("sqlite", database=str(path)), json_serializer=partial(json.dumps, allow_nan=False)
    )

    @event.listens_for(engine, "connect")
    def set_up(connection: sqlite3.Connection, _record: object) -> None:
        connection.isolation_level = None  # so that the transaction begins by our word, not by the driver's
        _write_ahead(connection)
        for pragma in pragmas:
            connection.execute(f"PRAGMA {pragma}")

    @event.listens_for(engine, "begin")
    def begin_transaction(connection: Connection) -> None:
        connection.exec_driver_sql(begin)

    return engine


def _write_ahead(connection: sqlite3.Connection) -> None:
    """Have changes written to a log first, so that nobody waits for a writer in order to read."""
    give_up_at = monotonic() + _BUSY_MS / 1000
    while True:
        try:
            connection.execute("PRAGMA journal_mode=WAL")
        except sqlite3.OperationalError as error:
            # While two processes start on a new file, SQLite refuses one of them without waiting.
            if kind_of_error(error) != sqlite3.SQLITE_BUSY or monotonic() > give_up_at:
                raise
            sleep(_BUSY_PAUSE_S)
        else:
            return


def _refuse_broken_references(connection: Connection) -> None:
    broken = connection.exec_driver_sql("PRAGMA foreign_key_check").all()
    if broken:
        raise StoreError(f"{len(broken)} rows would point at nothing after the update. Nothing was changed.")
