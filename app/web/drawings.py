"""Drawings of a build by their own addresses, as SVG: views of its best kit, and the scale of a finding."""

from __future__ import annotations

from typing import Annotated, Literal

from fastapi import APIRouter, HTTPException, Query
from pydantic import BaseModel, Field
from starlette.responses import Response

from app.drawings.span_scale import span_scale
from app.drawings.svg import Drawing
from app.store.database import Store
from app.web.build_address import CodeInAddress
from app.web.current import CurrentSite, CurrentStore
from app.web.figures import views_of
from app.web.revisions import MOST_REVISIONS
from app.web.shown_build import ShownBuild, as_it_stands, as_judged_now, as_saved, find_build, find_revision
from app.web.site import Site
from app.web.static_files import STYLES

router = APIRouter(include_in_schema=False)

NO_DRAWING = "There is no such drawing of {code}: nothing of it has been measured, or the parts have changed."


class Wanted(BaseModel):
    """Of which revision, or of the draft as it is judged now; of the latest revision where none is named."""

    revision: int | None = Field(default=None, ge=1, le=MOST_REVISIONS)
    judged: Literal["now"] | None = None


@router.get("/builds/{code}/drawings/{name}.svg")
async def drawing(
    code: CodeInAddress, name: str, wanted: Annotated[Wanted, Query()], site: CurrentSite, store: CurrentStore
) -> Response:
    """Send one drawing: side-view, axle, or that of a rule's finding by the rule's id."""
    shown = _shown(site, store, code, wanted)
    drawn = _drawn(site, shown, name)
    if drawn is None:
        raise HTTPException(404, NO_DRAWING.format(code=shown.code))
    return Response(drawn.document(site.static.address(STYLES)), media_type="image/svg+xml")


def _shown(site: Site, store: Store, code: str, wanted: Wanted) -> ShownBuild:
    record = find_build(store, code)
    if wanted.judged:
        return as_judged_now(record, site.checker)
    if wanted.revision is None:
        return as_it_stands(record, site.checker)
    return as_saved(record, find_revision(store, record, wanted.revision))


def _drawn(site: Site, shown: ShownBuild, name: str) -> Drawing | None:
    view = views_of(shown.report, shown.answers, site.checker).get(name)
    best = shown.report.best
    if view is not None or best is None:
        return view
    finding = next((each for each in best.findings if each.rule_id == name), None)
    return None if finding is None else span_scale(finding)
