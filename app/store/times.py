"""Times in the store are in UTC and say so, whatever the database remembers of their zone."""

from collections.abc import Callable
from datetime import UTC, datetime

from sqlalchemy import DateTime, Dialect
from sqlalchemy.types import TypeDecorator

Clock = Callable[[], datetime]


def utc_now() -> datetime:
    """The time on this machine's clock, with its zone."""
    return datetime.now(UTC)


class UtcTime(TypeDecorator[datetime]):
    """A column of times: goes in with any zone, comes out in UTC. A time without a zone is refused."""

    impl = DateTime(timezone=True)
    cache_ok = True

    def process_bind_param(self, value: datetime | None, _dialect: Dialect) -> datetime | None:
        if value is None:
            return None
        if value.tzinfo is None:
            raise ValueError(f"{value.isoformat()} needs a time zone before it can be kept.")
        return value.astimezone(UTC)

    def process_result_value(self, value: object | None, _dialect: Dialect) -> datetime | None:
        if not isinstance(value, datetime):
            return None
        # SQLite gives the time back without the zone that it went in with.
        return value.replace(tzinfo=UTC) if value.tzinfo is None else value.astimezone(UTC)
