"""The web application: its routes, what surrounds them, and what happens at start and at the end."""

from __future__ import annotations

import gc
from collections.abc import AsyncIterator
from contextlib import asynccontextmanager, closing
from typing import Any

from fastapi import FastAPI
from starlette.middleware.gzip import GZipMiddleware
from starlette.types import ASGIApp

from app.store.database import Store
from app.web import (
    compare,
    counter,
    counter_live,
    drawings,
    front_door,
    gauges,
    moved,
    privacy,
    result,
    revisions,
    rule_book,
    sheet,
    static_route,
)
from app.web.api.description import described
from app.web.api.routes import add_api
from app.web.delivery import LARGEST_BODY, DeclaredSize, HeadLikeGet
from app.web.errors import answer_errors
from app.web.parts_folder import read_checker
from app.web.security import OwnRequestsOnly, SecurityHeaders
from app.web.settings import Settings
from app.web.site import Site, make_site
from app.web.static_files import WORTH_COMPRESSING

ROUTERS = (
    front_door.router,
    privacy.router,
    static_route.router,
    counter_live.router,
    counter.router,
    result.router,
    drawings.router,
    moved.router,
    compare.router,
    revisions.router,
    sheet.router,
    rule_book.router,
    gauges.router,
)
# Level 5 gives a page within 2 % of level 9's size in half its time.
COMPRESSION = 5


class Application(FastAPI):
    """FastAPI inside our own surroundings, which so see every answer, that to a crash included."""

    def build_middleware_stack(self) -> ASGIApp:
        """From the inside out: size, origin, compression, HEAD, headers."""
        settings: Settings = self.state.site.settings
        app = OwnRequestsOnly(DeclaredSize(super().build_middleware_stack()), settings)
        return SecurityHeaders(HeadLikeGet(GZipMiddleware(app, WORTH_COMPRESSING, COMPRESSION)), settings)

    def openapi(self) -> dict[str, Any]:
        """The description of the JSON API, made when it is first asked for."""
        if self.openapi_schema is None:
            self.openapi_schema = described(super().openapi(), self.state.site.checker)
        return self.openapi_schema


def create_app(settings: Settings) -> FastAPI:
    """The application of one shop. Opens no database before it is started.

    Without a catalogue, pages say that there are no kits yet. Raises CatalogueFaults, StandardsFaults.
    """
    app = Application(
        title="Axlewright",
        version="1",
        lifespan=_while_serving,
        docs_url=None,
        redoc_url=None,
        redirect_slashes=False,
        max_body_size=LARGEST_BODY,
        form_limits={"max_fields": 400, "max_files": 0, "max_part_size": LARGEST_BODY},
        telemetry={"tracing": False, "metrics": False, "logs": False, "auto_configure": False},
    )
    checker = read_checker(settings.catalogue_folder, settings.standards_folder)
    app.state.site = make_site(settings, checker)
    answer_errors(app)
    for router in ROUTERS:
        app.include_router(router)
    add_api(app)
    return app


@asynccontextmanager
async def _while_serving(app: FastAPI) -> AsyncIterator[None]:
    site: Site = app.state.site
    with closing(Store(site.settings.database_url)) as store:
        store.migrate()
        app.state.store = store
        app.state.rule_book = rule_book.read_rule_book(site.settings, site.checker)
        # What was made at start stays; the collector need not look at it again at every page.
        gc.collect()
        gc.freeze()
        yield
        gc.unfreeze()
