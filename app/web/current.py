"""What a route asks for by its type: the site that answers, and the store that it reads and writes."""

from __future__ import annotations

from typing import Annotated

from fastapi import Depends, Request

from app.store.database import Store
from app.web.site import Site


async def current_site(request: Request) -> Site:
    """The site that answers this request."""
    site: Site = request.app.state.site
    return site


async def current_store(request: Request) -> Store:
    """The store of the shop; there only while the application is started."""
    store: Store = request.app.state.store
    return store


CurrentSite = Annotated[Site, Depends(current_site)]
CurrentStore = Annotated[Store, Depends(current_store)]
