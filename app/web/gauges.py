"""Paper gauges: the list of them, the page from which one is printed, and each of its sheets as SVG."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Annotated, ClassVar

from fastapi import APIRouter, HTTPException, Query
from markupsafe import Markup
from pydantic import BaseModel, Field
from starlette.responses import Response

from app.drawings.paper_gauge import PaperGauge, find_gauge, paper_gauges
from app.web.current import CurrentSite
from app.web.page import Density, Page
from app.web.site import Site
from app.web.static_files import STYLES

router = APIRouter(include_in_schema=False)

NO_GAUGE = "There is no gauge of an arm {arm} with an axle set {axle_set}."
NO_SHEET = "This gauge has {count} sheets."


@dataclass(frozen=True)
class GaugesPage(Page):
    """All gauges of the catalogue."""

    template: ClassVar[str] = "pages/gauges.html"

    heading = "Paper gauges"
    gauges: tuple[PaperGauge, ...]


@dataclass(frozen=True)
class GaugePage(Page):
    """One gauge, sheet by sheet, at its own size on paper.

    sheets  as SVG elements
    """

    template: ClassVar[str] = "pages/gauge.html"
    density: ClassVar[Density] = "sheet"

    gauge: PaperGauge
    sheets: tuple[Markup, ...]

    @property
    def heading(self) -> str:
        """The arm and the axle set."""
        return f"Paper gauge: {self.gauge.arm.name}, {self.gauge.axle_set.name}"


class Wanted(BaseModel):
    """Which sheet of a gauge, from 1."""

    sheet: int = Field(default=1, ge=1, le=9)


@router.get("/gauges")
async def gauges(site: CurrentSite) -> Response:
    """List the gauges that can be printed."""
    return site.show(GaugesPage(tuple(paper_gauges(site.catalogue)) if site.catalogue else ()))


@router.get("/gauges/{arm}/{axle_set}.svg")
async def gauge_sheet(
    arm: str, axle_set: str, wanted: Annotated[Wanted, Query()], site: CurrentSite
) -> Response:
    """Send one sheet by itself, at its own size in mm."""
    sheets = _found(site, arm, axle_set).sheets()
    if wanted.sheet > len(sheets):
        raise HTTPException(404, NO_SHEET.format(count=len(sheets)))
    document = sheets[wanted.sheet - 1].document(site.static.address(STYLES))
    return Response(document, media_type="image/svg+xml")


@router.get("/gauges/{arm}/{axle_set}")
async def gauge(arm: str, axle_set: str, site: CurrentSite) -> Response:
    """Show a gauge to be printed."""
    found = _found(site, arm, axle_set)
    # Our own drawing, its texts escaped where it is made.
    sheets = tuple(Markup(sheet.inline()) for sheet in found.sheets())  # noqa: S704
    return site.show(GaugePage(found, sheets))


def _found(site: Site, arm: str, axle_set: str) -> PaperGauge:
    found = find_gauge(site.catalogue, arm, axle_set) if site.catalogue else None
    if found is None:
        raise HTTPException(404, NO_GAUGE.format(arm=arm, axle_set=axle_set))
    return found
