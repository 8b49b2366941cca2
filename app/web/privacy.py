"""What the shop keeps of a check, said in full."""

from __future__ import annotations

from dataclasses import dataclass
from typing import ClassVar

from fastapi import APIRouter
from starlette.responses import Response

from app.web.current import CurrentSite
from app.web.page import Page

router = APIRouter(include_in_schema=False)


@dataclass(frozen=True)
class PrivacyPage(Page):
    """The page behind "What we keep"."""

    template: ClassVar[str] = "pages/privacy.html"

    heading = "What we keep"


@router.get("/privacy")
async def privacy(site: CurrentSite) -> Response:
    """Show what is kept."""
    return site.show(PrivacyPage())
