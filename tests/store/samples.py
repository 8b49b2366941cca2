"""Stores, snapshots and answers for the tests of the store; all of them invented."""

from datetime import UTC, datetime, timedelta
from pathlib import Path

from pydantic import JsonValue
from sqlmodel import SQLModel, func, select

from app.store.database import Store
from app.store.records import Snapshot

MORNING = datetime(2027, 5, 3, 10, 42, 7, tzinfo=UTC)


class ShopClock:
    """A clock that goes on a second each time somebody looks at it."""

    def __init__(self) -> None:
        self.time = MORNING

    def __call__(self) -> datetime:
        self.time += timedelta(seconds=1)
        return self.time


def opened(path: Path, clock: ShopClock | None = None) -> Store:
    store = Store(f"sqlite:///{path}", clock or ShopClock())
    store.migrate()
    return store


def reading(typed: str) -> JsonValue:
    return {"typed": typed, "tool": "calipers", "low": 134_400, "high": 134_800}


def snapshot(
    *,
    width: str = "134.6",
    catalogue: str = "6d0c1f27ab94",
    issued_by: str = "Sam",
    saved_at: datetime | None = None,
) -> Snapshot:
    return Snapshot(
        facts_json={"dropout_width_mm": reading(width)},
        combination_key="weir-135+weir-arm",
        report_json={
            "state": "fit",
            "sentence": f"Fits. Dropouts {width} mm ± 0.3; at worst 0.1 mm in hand.",
        },
        catalogue_revision=catalogue,
        catalogue_text_by_file={"hubs.yaml": f"# invented, {catalogue}\n- id: weir\n"},
        rules_revision="b91e",
        issued_by=issued_by,
        saved_at=saved_at,
    )


def count(store: Store, table: type[SQLModel]) -> int:
    with store.reading() as session:
        return session.exec(select(func.count()).select_from(table)).one()
