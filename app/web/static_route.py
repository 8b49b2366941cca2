"""The route of the static files."""

from __future__ import annotations

from fastapi import APIRouter, HTTPException, Request
from starlette.responses import Response

from app.web.current import CurrentSite

router = APIRouter(include_in_schema=False)


@router.get("/static/{name:path}")
async def static_file(name: str, request: Request, site: CurrentSite) -> Response:
    """Send a static file by its hashed address; an address without the right hash isn't there."""
    file = site.static.by_address.get(f"/static/{name}")
    if file is None:
        raise HTTPException(404)
    return file.response(request.headers.get("Accept-Encoding", ""))
