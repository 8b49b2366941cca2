"""A shop with its application, and a browser's manners for the client that visits it."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest
from fastapi import FastAPI
from fastapi.testclient import TestClient

from app.web.app import create_app
from app.web.settings import Settings

ADDRESS = "http://127.0.0.1:8000"
FROM_OUR_PAGE = {"Sec-Fetch-Site": "same-origin"}


@pytest.fixture
def settings(tmp_path: Path) -> Settings:
    """A shop whose builds are kept in a folder of the test's own."""
    return Settings(data_folder=tmp_path)


@pytest.fixture
def app(settings: Settings) -> FastAPI:
    """The application of that shop, not started."""
    return create_app(settings)


@pytest.fixture
def client(app: FastAPI) -> Iterator[TestClient]:
    """A browser on one of our own pages, which follows no redirect by itself; the application is started."""
    with TestClient(app, base_url=ADDRESS, headers=FROM_OUR_PAGE, follow_redirects=False) as client:
        yield client
