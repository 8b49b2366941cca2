"""A program that talks to the shop's API, and the bikes that it sends."""

from __future__ import annotations

import json
from collections.abc import Iterator
from typing import Any

import pytest
from fastapi.testclient import TestClient

from app.web.app import create_app
from app.web.settings import Settings
from tests.demo import SEED_DATA
from tests.web.conftest import ADDRESS


@pytest.fixture(scope="module")
def program(tmp_path_factory: pytest.TempPathFactory) -> Iterator[TestClient]:
    """A program without a cookie that says nothing of where it is, at one shop for all tests of a file."""
    app = create_app(Settings(data_folder=tmp_path_factory.mktemp("shop")))
    with TestClient(app, base_url=ADDRESS) as program:
        yield program


def demo_bike(name: str) -> dict[str, Any]:
    """The facts of a demo bike as they are sent."""
    told: dict[str, Any] = json.loads((SEED_DATA / "bikes" / f"{name}.json").read_text("utf-8"))
    del told["name"]
    return told
