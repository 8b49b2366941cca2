"""A store on disk for each test, with a clock that the test can wind."""

from collections.abc import Iterator
from pathlib import Path

import pytest

from app.store.database import Store
from tests.store.samples import ShopClock, opened


@pytest.fixture
def path(tmp_path: Path) -> Path:
    return tmp_path / "builds.db"


@pytest.fixture
def clock() -> ShopClock:
    return ShopClock()


@pytest.fixture
def store(path: Path, clock: ShopClock) -> Iterator[Store]:
    store = opened(path, clock)
    yield store
    store.close()
