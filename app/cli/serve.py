"""The command that serves the application on this machine."""

from __future__ import annotations

import sys
from pathlib import Path
from typing import Any

import uvicorn
from pydantic import ValidationError

from app.catalogue.fault import CatalogueFaults
from app.store.errors import StoreError
from app.web.app import create_app
from app.web.settings import Settings


def settings_from(port: int | None, data: Path | None) -> Settings:
    """The settings of the environment, with what the command line says instead."""
    given: dict[str, Any] = {}
    if port is not None:
        given["port"] = port
    if data is not None:
        given["data_folder"] = data
    return Settings(**given)


def serve(port: int | None, data: Path | None) -> int:
    """Serve until stopped. A setting, a catalogue or a database that can't be used is said in one line."""
    try:
        settings = settings_from(port, data)
        settings.data_folder.mkdir(parents=True, exist_ok=True)
        config = uvicorn.Config(
            create_app(settings),
            host=settings.host,
            port=settings.port,
            access_log=False,
            log_level="warning",
        )
        server = uvicorn.Server(config)
        print(f"Axlewright is at http://{settings.host}:{settings.port}/ (Ctrl+C stops it)", flush=True)  # noqa: T201
        server.run()
    except (ValidationError, CatalogueFaults, StoreError, OSError) as problem:
        print(f"Not started: {problem}", file=sys.stderr)  # noqa: T201
        return 1
    return 0 if server.started else 1
