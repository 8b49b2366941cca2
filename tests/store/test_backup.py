"""A backup is a whole copy of one moment that was opened and compared, or it is none."""

import sqlite3
from collections.abc import Iterator
from contextlib import closing
from pathlib import Path
from threading import Event, Thread

import pytest

from app.store.backup import backup, compare
from app.store.builds import load, save_draft, save_revision
from app.store.database import Store
from app.store.errors import StoreError
from app.store.tables import Build, FormAnswer
from tests.store.samples import count, opened, reading, snapshot

WIDTH = {"dropout_width_mm": reading("134.6")}


@pytest.fixture
def copy(tmp_path: Path) -> Path:
    return tmp_path / "copy.db"


@pytest.fixture
def original(store: Store) -> Iterator[sqlite3.Connection]:
    with closing(sqlite3.connect(store.path)) as connection:
        yield connection


def test_a_backup_opens_as_a_store_with_every_build(store: Store, copy: Path) -> None:
    code = save_draft(store, None, "form-1", WIDTH)
    save_revision(store, code, "form-2", snapshot())

    backup(store, copy)

    restored = opened(copy)
    assert load(restored, code) == load(store, code)
    restored.close()


def test_a_backup_never_overwrites(store: Store, copy: Path) -> None:
    copy.write_text("yesterday's backup")

    with pytest.raises(StoreError, match="a backup never overwrites"):
        backup(store, copy)

    assert copy.read_text() == "yesterday's backup"


def test_a_backup_that_cannot_be_written_leaves_nothing_behind(store: Store, tmp_path: Path) -> None:
    with pytest.raises(StoreError, match="can't be opened"):
        backup(store, tmp_path / "no such folder" / "copy.db")

    assert not list(tmp_path.rglob("copy.db*"))


def test_a_backup_ends_and_is_of_one_moment_while_the_counter_goes_on_saving(
    store: Store, copy: Path
) -> None:
    closing_time = Event()

    def save_all_day() -> None:
        number = 0
        while not closing_time.is_set():
            save_draft(store, None, f"form-{number}", WIDTH)
            number += 1

    counter = Thread(target=save_all_day)
    counter.start()
    try:
        backup(store, copy)
    finally:
        closing_time.set()
        counter.join()

    restored = opened(copy)
    assert count(restored, Build) == count(restored, FormAnswer) <= count(store, Build)
    restored.close()


def test_a_copy_with_one_other_letter_is_found_out(
    store: Store, original: sqlite3.Connection, copy: Path
) -> None:
    save_draft(store, None, "form-1", WIDTH)
    backup(store, copy)
    with closing(sqlite3.connect(copy)) as connection, connection:
        connection.execute("UPDATE draft_answers SET fact = 'dropout_width_mn'")

    with pytest.raises(StoreError, match="differs from the database, so it is no backup"):
        compare(original, copy)


def test_a_copy_with_a_damaged_page_is_found_out(
    store: Store, original: sqlite3.Connection, copy: Path
) -> None:
    save_draft(store, None, "form-1", WIDTH)
    backup(store, copy)
    compare(original, copy)
    damaged = bytearray(copy.read_bytes())
    damaged[4096:8192] = bytes(4096)
    copy.write_bytes(damaged)

    with pytest.raises(StoreError, match="differs from the database, so it is no backup"):
        compare(original, copy)
