"""What the counter sheet is told while somebody types: nothing is saved, everything is judged."""

from __future__ import annotations

from dataclasses import replace

from fastapi import APIRouter
from starlette.responses import Response

from app.facts.form_reader import read_form
from app.facts.reading import Reading
from app.web.counter_page import Sight
from app.web.current import CurrentSite
from app.web.posted import PostedForm
from app.web.written import posted_sheet, sheet_from_json

router = APIRouter(include_in_schema=False)


@router.post("/counter/live")
async def live(site: CurrentSite, posted: PostedForm) -> Response:
    """Judge the sheet as it stands on the screen."""
    in_hand = posted.text("in_hand")
    reading = _while_typing(read_form(posted.fields), in_hand)
    stored = sheet_from_json(posted.text("shown"))
    sight = Sight(posted_sheet(posted.fields), stored, reading.answers, reading.errors, in_hand)
    return site.show(sight.answer(site.checker))


def _while_typing(reading: Reading, in_hand: str) -> Reading:
    """A number that is half typed is no mistake yet: the fact in hand gets its errors when it is left."""
    errors = tuple(error for error in reading.errors if error.fact != in_hand or error.also)
    return replace(reading, errors=errors)
