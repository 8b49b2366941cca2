"""The front door: start a check, open one by its code, see which kits the shop has."""

from __future__ import annotations

from dataclasses import dataclass
from typing import ClassVar

from fastapi import APIRouter
from starlette.responses import RedirectResponse, Response

from app.store import builds
from app.store.codes import CodeError, normalise
from app.web.current import CurrentSite, CurrentStore
from app.web.kits import Kit, kits_of
from app.web.page import Page
from app.web.site import Site

router = APIRouter(include_in_schema=False)

# What is typed comes back, but no more of it than any code could be.
LONGEST_CODE = 20


@dataclass(frozen=True)
class FrontDoorPage(Page):
    """Where customers and staff come in.

    whose         whose catalogue it is, or empty
    code_error    one sentence about the code that was typed, or empty
    """

    template: ClassVar[str] = "pages/front_door.html"

    kits: tuple[Kit, ...]
    whose: str
    typed_code: str = ""
    code_error: str = ""

    heading = "Does the kit fit your bike?"

    @property
    def has_errors(self) -> bool:
        return bool(self.code_error)


@router.get("/")
async def front_door(site: CurrentSite) -> Response:
    """Show the front door."""
    return site.show(_front_door(site))


@router.get("/builds/open")
async def open_build(site: CurrentSite, store: CurrentStore, code: str = "") -> Response:
    """Go to the check with the code that was typed, or say what is wrong with the code."""
    try:
        shown_code = normalise(code)
    except CodeError as wrong:
        return site.show(_front_door(site, code, str(wrong)), status_code=422)
    if builds.load(store, shown_code) is None:
        unknown = f"We have no check with the code {shown_code}. Check the last four characters."
        return site.show(_front_door(site, code, unknown), status_code=404)

    return RedirectResponse(f"/builds/{shown_code}", status_code=303)


def _front_door(site: Site, typed: str = "", error: str = "") -> FrontDoorPage:
    whose = site.catalogue.about if site.catalogue else ""
    return FrontDoorPage(kits_of(site.catalogue), whose, typed[:LONGEST_CODE], error)
