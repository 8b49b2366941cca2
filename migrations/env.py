"""Runs the migrations on the connection that the store hands over, or on the database at -x url=ADDRESS."""

from typing import Literal

from alembic import context
from sqlalchemy import Connection
from sqlmodel import AutoString

from app.store.database import Store
from app.store.tables import Build
from app.store.times import UtcTime


def run(connection: Connection) -> None:
    context.configure(
        connection=connection,
        target_metadata=Build.metadata,
        render_as_batch=True,
        render_item=without_our_types,
    )
    with context.begin_transaction():
        context.run_migrations()


def without_our_types(kind: str, item: object, _autogen: object) -> str | Literal[False]:
    """A migration outlives the code of its day, so it names the database's types; else alembic decides."""
    if kind == "type" and isinstance(item, UtcTime):
        return "sa.DateTime(timezone=True)"
    if kind == "type" and isinstance(item, AutoString):
        return "sa.String()"
    return False


if "connection" in context.config.attributes:
    run(context.config.attributes["connection"])
else:
    store = Store(context.get_x_argument(as_dictionary=True)["url"])
    try:
        with store.migrating() as own_connection:
            run(own_connection)
    finally:
        store.close()
