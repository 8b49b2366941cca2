"""Runs the migrations on the connection that the store hands over, or on the database at -x url=ADDRESS."""

from alembic import context
from sqlalchemy import Connection

from app.store.database import Store
from app.store.tables import SQLModel


def run(connection: Connection) -> None:
    context.configure(connection=connection, target_metadata=SQLModel.metadata, render_as_batch=True)
    with context.begin_transaction():
        context.run_migrations()


if "connection" in context.config.attributes:
    run(context.config.attributes["connection"])
else:
    store = Store(context.get_x_argument(as_dictionary=True)["url"])
    try:
        with store.migrating() as own_connection:
            run(own_connection)
    finally:
        store.close()
