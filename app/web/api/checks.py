"""Checks a bike and says everything about it; nothing is kept."""

from __future__ import annotations

from fastapi import APIRouter, Request
from pydantic import TypeAdapter
from starlette.responses import Response

from app.facts.json_reader import read_json
from app.report.build import Checker
from app.report.report import Report
from app.web.api.documented import JSON, OF_BODY, answered, taken
from app.web.api.refused import RefusedError, refuse_unread
from app.web.api.sent import sent_json
from app.web.current import CurrentSite
from app.web.site import Site

router = APIRouter(tags=["checks"])

REPORT = TypeAdapter(Report)
NO_KITS = "This shop hasn't set up its kits yet."
NOT_NOW = 503


@router.post(
    "/checks",
    operation_id="check_bike",
    summary="Check which kits fit a bike",
    responses=answered("Report", "The verdict and all its reasons.", refusals=(*OF_BODY, NOT_NOW)),
    openapi_extra=taken("Facts"),
)
async def check_bike(request: Request, site: CurrentSite) -> Response:
    """Judge a bike against every kit of the catalogue, and say what to measure next. Nothing is saved.

    What is left out is not known, and `null` says so too; neither is guessed. One fact that can't be read
    refuses the whole check, and the answer then names every such fact.
    """
    checker = the_checker(site)
    reading = read_json(await sent_json(request))
    refuse_unread(reading.errors)
    return Response(REPORT.dump_json(checker.report(reading.answers)), media_type=JSON)


def the_checker(site: Site) -> Checker:
    """What checks are made with. Raises RefusedError where the shop has no catalogue."""
    if site.checker is None:
        raise RefusedError(NOT_NOW, NO_KITS)
    return site.checker
