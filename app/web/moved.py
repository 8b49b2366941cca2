"""What moved since the latest revision of a build: its words of that day beside those of today."""

from __future__ import annotations

from dataclasses import dataclass
from typing import ClassVar

from fastapi import APIRouter
from starlette.responses import RedirectResponse, Response

from app.web.build_address import CodeInAddress
from app.web.change_rows import ChangeTable, change_table
from app.web.current import CurrentSite, CurrentStore
from app.web.out_of_date import moved_on
from app.web.shown_build import BuildPage, as_judged_now, as_saved, find_build

router = APIRouter(include_in_schema=False)


@dataclass(frozen=True)
class MovedPage(BuildPage):
    """The latest revision and the same build judged now, only what differs. `why` says what has changed."""

    template: ClassVar[str] = "pages/moved.html"

    why: tuple[str, ...]
    table: ChangeTable

    heading = "What moved"


@router.get("/builds/{code}/moved")
async def moved(code: CodeInAddress, site: CurrentSite, store: CurrentStore) -> Response:
    """Show what moved; a build without a revision has nothing to compare with."""
    record = find_build(store, code)
    if record.latest is None:
        return RedirectResponse(f"/builds/{code}", status_code=303)

    before, after = as_saved(record, record.latest), as_judged_now(record, site.checker)
    table = change_table(before, after, (f"Revision {before.letter}", "Judged now"))
    return site.show(MovedPage(before.foot(site.settings), moved_on(before, site.checker), table))
