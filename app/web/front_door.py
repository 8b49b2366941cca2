"""The front door: start a check, open one by its code, see which kits the shop has."""

from __future__ import annotations

from dataclasses import dataclass
from typing import ClassVar

from fastapi import APIRouter
from starlette.responses import RedirectResponse, Response

from app.catalogue.catalogue import Catalogue
from app.catalogue.hub_parts import Hub
from app.store import builds
from app.store.codes import CodeError, normalise
from app.web.current import CurrentSite, CurrentStore
from app.web.page import Page
from app.web.site import Site

router = APIRouter(include_in_schema=False)

# What is typed comes back, but no more of it than any code could be.
LONGEST_CODE = 20
MOTORS = {"direct_drive": "Direct drive", "geared": "Geared"}


@dataclass(frozen=True, slots=True)
class Kit:
    """One hub in three lines."""

    name: str
    motor: str
    rear_ends: tuple[str, ...]
    note: str


@dataclass(frozen=True)
class FrontDoorPage(Page):
    """Where customers and staff come in.

    code_error    one sentence about the code that was typed, or empty
    """

    template: ClassVar[str] = "pages/front_door.html"

    kits: tuple[Kit, ...]
    typed_code: str = ""
    code_error: str = ""

    heading = "Does the kit fit your bike?"

    @property
    def has_errors(self) -> bool:
        return bool(self.code_error)


def kits_of(catalogue: Catalogue | None) -> tuple[Kit, ...]:
    """The hubs of a catalogue, each with the names of the axle sets that fit it into a rear end."""
    return () if catalogue is None else tuple(_kit(hub, catalogue) for hub in catalogue.hubs)


def _kit(hub: Hub, catalogue: Catalogue) -> Kit:
    rear_ends = tuple(axle_set.name for axle_set in catalogue.axle_sets if hub.id in axle_set.hubs)
    return Kit(hub.name, f"{MOTORS[hub.motor]}, {hub.spoke_holes} spokes", rear_ends, hub.note)


@router.get("/")
async def front_door(site: CurrentSite) -> Response:
    """Show the front door."""
    return site.show(FrontDoorPage(kits=kits_of(site.catalogue)))


@router.get("/builds/open")
async def open_build(site: CurrentSite, store: CurrentStore, code: str = "") -> Response:
    """Go to the check with the code that was typed, or say what is wrong with the code."""
    try:
        shown_code = normalise(code)
    except CodeError as wrong:
        return _front_door_again(site, code, str(wrong), status_code=422)
    if builds.load(store, shown_code) is None:
        unknown = f"We have no check with the code {shown_code}. Check the last four characters."
        return _front_door_again(site, code, unknown, status_code=404)

    return RedirectResponse(f"/builds/{shown_code}", status_code=303)


def _front_door_again(site: Site, typed: str, error: str, *, status_code: int) -> Response:
    page = FrontDoorPage(kits_of(site.catalogue), typed[:LONGEST_CODE], error)
    return site.show(page, status_code=status_code)
