"""Brings a database to the tables that this version needs, or says why it can't."""

from collections.abc import Callable
from pathlib import Path

from alembic import command
from alembic.config import Config
from alembic.migration import MigrationContext
from alembic.script import ScriptDirectory
from sqlalchemy import Connection, inspect

from app.store.errors import StoreError

PYPROJECT = Path(__file__).parents[2] / "pyproject.toml"

_NEWER = (
    "A newer version made this database. Start that version, or restore the backup from before the update."
)
_FOREIGN = "This database belongs to another program. Choose another file for the database."


def bring_up_to_date(
    connection: Connection, keep_a_copy: Callable[[str], Path], config: Config | None
) -> Path | None:
    """Change the tables to the newest, after keeping a copy of an older database; the path of that copy.

    Raises StoreError for a database that is newer than this version or belongs to another program.
    """
    config = config or Config(toml_file=PYPROJECT)
    scripts = ScriptDirectory.from_config(config)
    found = MigrationContext.configure(connection).get_current_revision()
    _refuse_what_is_not_ours(connection, found, scripts)
    if found == scripts.get_current_head():
        return None

    kept = keep_a_copy(found) if found else None
    config.attributes["connection"] = connection
    command.upgrade(config, "head")
    return kept


def _refuse_what_is_not_ours(connection: Connection, found: str | None, scripts: ScriptDirectory) -> None:
    tables = set(inspect(connection).get_table_names()) - {"alembic_version"}
    if (found or tables) and not (found and "builds" in tables):
        raise StoreError(_FOREIGN)
    if found and found not in {script.revision for script in scripts.walk_revisions()}:
        raise StoreError(_NEWER)
