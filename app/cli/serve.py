"""The command that serves the application on this machine."""

from __future__ import annotations

import socket
from contextlib import closing, suppress
from pathlib import Path
from typing import Any

import uvicorn
from fastapi import FastAPI
from pydantic import ValidationError

from app.catalogue.fault import TextFaults
from app.cli.said import complain
from app.store.database import Store
from app.store.errors import StoreError
from app.web.app import create_app
from app.web.settings import Settings

NOT_STARTED = "Not started"


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
        app = create_app(settings)
        # Now already, because the server would tell of a database that can't be used in forty lines.
        with closing(Store(settings.database_url)) as store:
            store.migrate()
        listening = _listening(settings.host, settings.port)
    except (ValidationError, TextFaults, StoreError, OSError) as problem:
        complain(NOT_STARTED, problem)
        return 1
    with listening:
        return _serve(app, listening)


def _listening(host: str, port: int) -> socket.socket:
    """A socket that takes connections. Raises OSError, with the address in it."""
    try:
        family = socket.getaddrinfo(host, port, type=socket.SOCK_STREAM)[0][0]
        return socket.create_server((host, port), family=family)
    except OSError as fault:
        raise OSError(fault.errno, fault.strerror, f"{host}:{port}") from fault


def _serve(app: FastAPI, listening: socket.socket) -> int:
    host, port = listening.getsockname()[:2]
    shown = f"[{host}]" if ":" in host else host
    print(f"Axlewright is at http://{shown}:{port}/ (Ctrl+C stops it)", flush=True)
    server = uvicorn.Server(uvicorn.Config(app, access_log=False, log_level="warning"))
    with suppress(KeyboardInterrupt):
        server.run(sockets=[listening])
    return 0 if server.started else 1
