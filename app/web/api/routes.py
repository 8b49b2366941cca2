"""All routes of the API under their address, and how an application is given them."""

from __future__ import annotations

from fastapi import FastAPI

from app.web.api import builds, checks, tables
from app.web.api.refused import RefusedError, answer_refused

ADDRESS = "/api/v1"
ROUTERS = (checks.router, builds.router, tables.router)


def add_api(app: FastAPI) -> None:
    """Give an application the routes of the API and its way to refuse."""
    app.add_exception_handler(RefusedError, answer_refused)
    for router in ROUTERS:
        app.include_router(router, prefix=ADDRESS)
