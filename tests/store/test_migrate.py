"""An empty or older database is brought up to date at start; any other is refused in a sentence."""

import shutil
import sqlite3
from collections.abc import Iterator
from concurrent.futures import ThreadPoolExecutor
from contextlib import closing
from pathlib import Path
from threading import Timer

import pytest
from alembic import command
from alembic.autogenerate import compare_metadata
from alembic.config import Config
from alembic.migration import MigrationContext
from sqlmodel import SQLModel

from app.store.builds import load, revision, save_draft, save_revision
from app.store.database import Store
from app.store.errors import StoreError
from app.store.migrate import PYPROJECT
from app.store.tables import Build
from tests.store.samples import ShopClock, count, opened, reading, snapshot

WIDTH = {"dropout_width_mm": reading("134.6")}

NEXT_VERSION = """
import sqlalchemy as sa
from alembic import op

revision = "next"
down_revision = "0001"


def upgrade() -> None:
    with op.batch_alter_table("builds", recreate="always") as builds:
        builds.add_column(sa.Column("note", sa.String(), nullable=False, server_default="none yet"))
    {last_step}
"""


@pytest.fixture
def next_version(tmp_path: Path) -> Config:
    return migrations_and_one_more(tmp_path, last_step="pass")


def migrations_and_one_more(folder: Path, last_step: str) -> Config:
    scripts = folder / "migrations"
    shutil.copytree(PYPROJECT.parent / "migrations", scripts, ignore=shutil.ignore_patterns("__pycache__"))
    (scripts / "versions" / "next.py").write_text(NEXT_VERSION.format(last_step=last_step))
    config = Config(toml_file=PYPROJECT)
    config.set_main_option("script_location", str(scripts))
    return config


@pytest.fixture
def sold(store: Store) -> str:
    """The code of a build with a revision."""
    code = save_draft(store, None, "form-1", WIDTH)
    save_revision(store, code, "form-2", snapshot())
    return code


@pytest.fixture
def unopened(path: Path) -> Iterator[Store]:
    """A store whose file is there, or not, as the test has it."""
    store = Store(f"sqlite:///{path}", ShopClock())
    yield store
    store.close()


def columns(path: Path) -> set[str]:
    with closing(sqlite3.connect(path)) as connection:
        return {row[1] for row in connection.execute("PRAGMA table_info(builds)")}


def contents(path: Path) -> list[str]:
    with closing(sqlite3.connect(path)) as connection:
        return list(connection.iterdump())


def test_the_migrations_make_the_tables_that_the_code_describes(store: Store) -> None:
    with store.migrating() as connection:
        differences = compare_metadata(MigrationContext.configure(connection), SQLModel.metadata)

    assert differences == []


def test_an_empty_file_becomes_a_database_and_needs_no_backup(path: Path, unopened: Store) -> None:
    path.touch()

    assert unopened.migrate() is None
    assert count(unopened, Build) == 0


def test_a_second_start_changes_nothing(store: Store, sold: str, path: Path) -> None:
    before = contents(path)

    assert store.migrate() is None

    assert contents(path) == before
    assert load(store, sold) is not None


def test_an_older_database_is_brought_up_to_date_with_all_that_is_in_it(
    store: Store, sold: str, path: Path, next_version: Config
) -> None:
    before = (load(store, sold), revision(store, sold, 1))

    store.migrate(next_version)

    assert "note" in columns(path)
    assert (load(store, sold), revision(store, sold, 1)) == before


def test_before_an_update_a_copy_is_kept_that_the_older_version_can_open(
    store: Store, sold: str, next_version: Config
) -> None:
    kept = store.migrate(next_version)

    assert kept is not None
    assert kept.name == "builds.before-update-from-0001-20270503T104210.db"
    assert "note" not in columns(kept)
    restored = opened(kept)
    assert load(restored, sold) == load(store, sold)
    restored.close()


def test_an_update_that_fails_leaves_the_database_as_it_was(
    store: Store, sold: str, path: Path, tmp_path: Path
) -> None:
    before = contents(path)

    with pytest.raises(ZeroDivisionError):
        store.migrate(migrations_and_one_more(tmp_path, last_step="1 / 0"))

    assert contents(path) == before
    assert len(list(tmp_path.glob("builds.before-update-*.db"))) == 1
    assert store.migrate() is None
    assert load(store, sold) is not None


def test_an_update_that_would_leave_answers_without_their_build_is_undone(
    store: Store, sold: str, path: Path, tmp_path: Path
) -> None:
    before = contents(path)

    with pytest.raises(StoreError, match="2 rows would point at nothing after the update"):
        store.migrate(migrations_and_one_more(tmp_path, last_step='op.execute("DELETE FROM builds")'))

    assert contents(path) == before
    assert load(store, sold) is not None


def test_a_newer_database_is_refused_and_left_alone(
    store: Store, sold: str, path: Path, next_version: Config
) -> None:
    store.migrate(next_version)
    before = contents(path)

    with pytest.raises(StoreError, match="A newer version made this database"):
        store.migrate()

    assert contents(path) == before
    assert load(store, sold) is not None


@pytest.mark.parametrize(
    "tables",
    [
        pytest.param("CREATE TABLE recipes (id INTEGER)", id="of a cookery book"),
        pytest.param("CREATE TABLE builds (id INTEGER)", id="with a table that is called like ours"),
        pytest.param(
            "CREATE TABLE alembic_version (version_num TEXT); INSERT INTO alembic_version VALUES ('a1b2');"
            "CREATE TABLE recipes (id INTEGER)",
            id="that uses the same tool for its updates",
        ),
    ],
)
def test_the_database_of_another_program_is_refused_and_left_alone(
    path: Path, unopened: Store, tables: str
) -> None:
    with closing(sqlite3.connect(path)) as connection:
        connection.executescript(tables)
    before = contents(path)

    with pytest.raises(StoreError, match="This database belongs to another program"):
        unopened.migrate()

    assert contents(path) == before


def test_a_file_that_is_no_database_is_refused_and_left_alone(path: Path, unopened: Store) -> None:
    path.write_text("A letter to the shop, much longer than the head of a database. " * 100)
    before = path.read_bytes()

    with pytest.raises(StoreError, match="This file is no database of ours"):
        unopened.migrate()

    assert path.read_bytes() == before


def test_a_folder_in_the_place_of_the_database_is_told_in_a_sentence(path: Path, unopened: Store) -> None:
    path.mkdir()

    with pytest.raises(StoreError, match="The database can't be opened"):
        unopened.migrate()


def test_two_processes_that_start_at_the_same_moment_both_get_their_tables(path: Path) -> None:
    processes = [Store(f"sqlite:///{path}") for _ in range(2)]

    with ThreadPoolExecutor(2) as starts:
        backups = list(starts.map(Store.migrate, processes))

    assert backups == [None, None]
    code = save_draft(processes[0], None, "form-1", WIDTH)
    assert load(processes[1], code) is not None
    for process in processes:
        process.close()


def test_a_start_waits_for_another_program_that_is_still_making_the_file(path: Path, unopened: Store) -> None:
    other = sqlite3.connect(path, isolation_level=None, check_same_thread=False)
    other.execute("BEGIN IMMEDIATE")
    done = Timer(0.1, other.rollback)
    done.start()

    unopened.migrate()

    done.join()
    other.close()
    assert count(unopened, Build) == 0


def test_a_developer_can_take_the_tables_away_and_make_them_again(store: Store) -> None:
    config = Config(toml_file=PYPROJECT)
    with store.migrating() as connection:
        config.attributes["connection"] = connection
        command.downgrade(config, "base")

    store.migrate()

    assert count(store, Build) == 0
