"""The database keeps what it acknowledged, lets readers read, and says in a sentence what stops it."""

import sqlite3
from datetime import datetime, timedelta, timezone
from pathlib import Path

import pytest
from sqlalchemy import text
from sqlalchemy.exc import StatementError
from sqlmodel import Session

from app.store.builds import load, revision, save_draft, save_revision
from app.store.database import Store
from app.store.errors import StoreError, told_in_words
from app.store.tables import Build
from tests.store.samples import MORNING, count, opened, reading, snapshot

FULL = 2
WIDTH = {"dropout_width_mm": reading("134.6")}


def pragma(session: Session, name: str) -> object:
    return session.connection().execute(text(f"PRAGMA {name}")).scalar()


def test_what_is_acknowledged_survives_a_power_cut(store: Store) -> None:
    with store.writing() as session:
        assert pragma(session, "journal_mode") == "wal"
        assert pragma(session, "synchronous") == FULL
        assert pragma(session, "foreign_keys") == 1
        assert pragma(session, "busy_timeout") == 5000


def test_a_reader_cannot_write(store: Store) -> None:
    code = save_draft(store, None, "form-1", WIDTH)

    with pytest.raises(StoreError, match="can't be written to"), store.reading() as session:
        session.connection().execute(text("DELETE FROM builds"))

    assert load(store, code) is not None


def test_a_reader_reads_on_while_somebody_writes(store: Store) -> None:
    code = save_draft(store, None, "form-1", WIDTH)

    with store.writing() as session:
        session.connection().execute(text("UPDATE builds SET job = 'half done'"))
        build = load(store, code)

    assert build is not None
    assert build.job is None


def test_a_reader_sees_one_moment(store: Store) -> None:
    save_draft(store, None, "form-1", WIDTH)

    with store.reading() as session:
        before = session.connection().execute(text("SELECT count(*) FROM builds")).scalar()
        save_draft(store, None, "form-2", WIDTH)
        after = session.connection().execute(text("SELECT count(*) FROM builds")).scalar()

    assert before == after == 1
    assert count(store, Build) == 2


def test_a_mistake_in_the_middle_undoes_all_of_it(store: Store) -> None:
    code = save_draft(store, None, "form-1", WIDTH)

    def fail_half_way() -> None:
        with store.writing() as session:
            session.connection().execute(text("DELETE FROM builds"))
            raise KeyError("no such fact")

    with pytest.raises(KeyError):
        fail_half_way()

    assert load(store, code) is not None


def test_a_store_without_a_file_works_and_leaves_nothing_behind() -> None:
    store = Store("sqlite://")
    store.migrate()
    code = save_draft(store, None, "form-1", WIDTH)
    build = load(store, code)

    store.close()

    assert build is not None
    assert build.facts == WIDTH
    assert not store.path.parent.exists()


def test_the_folder_of_the_database_is_made(tmp_path: Path) -> None:
    store = opened(tmp_path / "var" / "shop" / "builds.db")

    assert store.path.exists()
    store.close()


def test_a_folder_that_cannot_be_made_is_told_in_a_sentence(tmp_path: Path) -> None:
    (tmp_path / "var").write_text("a file, not a folder")

    with pytest.raises(StoreError, match="for the database can't be made"):
        Store(f"sqlite:///{tmp_path}/var/builds.db")


def test_another_kind_of_database_is_told_in_a_sentence() -> None:
    with pytest.raises(StoreError, match="Builds are kept in SQLite, not in postgresql"):
        Store("postgresql+psycopg://shop@localhost/builds")


def test_times_are_kept_in_utc_whatever_zone_they_come_in(store: Store) -> None:
    code = save_draft(store, None, "form-1", WIDTH)
    summer_time = timezone(timedelta(hours=2))

    save_revision(
        store, code, "form-2", snapshot(saved_at=datetime(2027, 5, 3, 12, 42, 7, tzinfo=summer_time))
    )

    record = revision(store, code, 1)
    assert record is not None
    assert record.saved_at == MORNING
    assert record.saved_at.utcoffset() == timedelta(0)


def test_a_time_without_a_zone_is_refused(store: Store) -> None:
    code = save_draft(store, None, "form-1", WIDTH)
    nowhere = MORNING.replace(tzinfo=None)

    with pytest.raises(StatementError, match="needs a time zone"):
        save_revision(store, code, "form-2", snapshot(saved_at=nowhere))

    assert revision(store, code, 1) is None


def test_a_number_that_is_none_is_not_kept(store: Store) -> None:
    with pytest.raises(StatementError, match="not JSON compliant"):
        save_draft(store, None, "form-1", {"slot_width_mm": {"typed": "nan", "low": float("nan")}})

    assert count(store, Build) == 0


def test_a_full_disk_is_told_in_a_sentence_and_loses_nothing(store: Store) -> None:
    code = save_draft(store, None, "form-1", WIDTH)
    with store.writing() as session:
        pages = pragma(session, "page_count")
        pragma(session, f"max_page_count={pages}")

    with pytest.raises(StoreError, match="The disk is full, so nothing was saved"):
        save_draft(store, code, "form-2", {"frame_material": {"typed": "x" * 100_000}})

    with store.writing() as session:
        pragma(session, "max_page_count=1000000")
    build = load(store, code)
    assert build is not None
    assert build.facts == WIDTH
    assert save_draft(store, code, "form-2", {"frame_material": {"typed": "x" * 100_000}}) == code


def test_a_database_that_another_program_keeps_busy_is_told_in_a_sentence(store: Store) -> None:
    other = sqlite3.connect(store.path, isolation_level=None)
    other.execute("BEGIN IMMEDIATE")
    impatient = sqlite3.connect(store.path, timeout=0, isolation_level=None)

    with pytest.raises(StoreError, match="Another program keeps the database busy"), told_in_words():
        impatient.execute("BEGIN IMMEDIATE")

    other.close()
    impatient.close()


def test_a_mistake_of_ours_is_not_dressed_up_as_trouble_with_the_disk() -> None:
    connection = sqlite3.connect(":memory:")

    with pytest.raises(sqlite3.OperationalError, match="no such table"), told_in_words():
        connection.execute("SELECT * FROM builts")

    connection.close()
