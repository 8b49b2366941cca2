"""The counter sheet: one bike on one page, saved field by field and, when asked, as a revision."""

from __future__ import annotations

from urllib.parse import urlencode

from fastapi import APIRouter, HTTPException
from starlette.responses import JSONResponse, RedirectResponse, Response

from app.facts.contradictions import contradictions
from app.facts.reading import FactError
from app.facts.table import FACTS
from app.store import builds
from app.store.codes import CodeError, normalise
from app.store.errors import FormReusedError
from app.store.records import BuildRecord
from app.web.build_address import CodeInAddress
from app.web.counter_page import BuildHead, Problem, Sight, problems_of
from app.web.counter_saving import AtTheDesk, Desk, Saved, one_field
from app.web.counter_sent import NOTHING_YET, SENT_BEFORE, Sent, name_in, sent
from app.web.current import CurrentStore
from app.web.draft import answers_of
from app.web.posted import Posted, PostedForm
from app.web.problem import problem
from app.web.written import stored_sheet

router = APIRouter(include_in_schema=False)

NOT_SAVED = "Not saved. {message}"
NOT_SAVED_MANY = "Not saved. {count} entries need a change first."


@router.get("/counter")
async def new_sheet(desk: AtTheDesk) -> Response:
    """Show an empty sheet."""
    return _shown(desk, None)


@router.get("/counter/open")
async def open_sheet(store: CurrentStore, code: str = "") -> Response:
    """Go to the sheet of the build with this code; the front door says what is wrong with a code."""
    try:
        known = builds.load(store, normalise(code))
    except CodeError:
        known = None
    address = BuildHead(known.code).address if known else "/builds/open?" + urlencode({"code": code})
    return RedirectResponse(address, status_code=303)


@router.get("/builds/{code}/counter")
async def sheet_of_build(code: CodeInAddress, desk: AtTheDesk) -> Response:
    """Show the sheet of a build with its answers as they were typed."""
    return _shown(desk, desk.found(code))


@router.post("/counter")
def save_new_sheet(desk: AtTheDesk, posted: PostedForm) -> Response:
    """Save a whole new sheet, and a revision of it where "Save" was pressed."""
    return _sheet_saved(desk, sent(None, posted))


@router.post("/builds/{code}/counter")
def save_sheet(code: CodeInAddress, desk: AtTheDesk, posted: PostedForm) -> Response:
    """Save what was changed on the sheet of a build, and a revision where "Save" was pressed."""
    return _sheet_saved(desk, sent(desk.found(code), posted))


@router.post("/counter/facts/{fact}")
def save_first_field(fact: str, desk: AtTheDesk, posted: PostedForm) -> Response:
    """Make a build of the first field that is left."""
    return _field_saved(desk, None, fact, posted)


@router.post("/builds/{code}/facts/{fact}")
def save_field(code: CodeInAddress, fact: str, desk: AtTheDesk, posted: PostedForm) -> Response:
    """Save one field of a build and leave the others alone."""
    return _field_saved(desk, code, fact, posted)


@router.post("/builds/{code}/revisions")
def save_revision(code: CodeInAddress, desk: AtTheDesk, posted: PostedForm) -> Response:
    """Freeze a build as it is stored."""
    whole = sent(desk.found(code), posted)
    if whole.problems:
        return _refused(desk, whole, whole.problems)
    return _told(posted, desk.save_revision(code, posted.form_id, whole.issued_by))


@router.post("/builds/{code}/copies")
def copy_build(code: CodeInAddress, desk: AtTheDesk, posted: PostedForm) -> Response:
    """Begin a new sheet with the answers of this one."""
    return _told(posted, desk.save_draft(None, posted.form_id, desk.found(code).facts, None))


def _shown(desk: Desk, record: BuildRecord | None) -> Response:
    answers = answers_of(record)
    stored = stored_sheet(answers)
    sight = Sight(stored, stored, answers, contradictions(answers))
    return desk.site.show(sight.page(desk.site.checker, desk.head(record)))


def _sheet_saved(desk: Desk, whole: Sent) -> Response:
    if whole.problems:
        return _refused(desk, whole, whole.problems)
    if whole.record is None and not whole.changes_something:
        return (
            _refused(desk, whole, (NOTHING_YET,)) if whole.is_to_be_frozen else _told(whole.posted, Saved())
        )
    try:
        saved = _all_saved(desk, whole)
    except FormReusedError:
        return _refused(desk, whole, (SENT_BEFORE,))
    return _told(whole.posted, saved, whole.in_hand)


def _all_saved(desk: Desk, whole: Sent) -> Saved:
    code, form_id = (whole.record.code if whole.record else None), whole.posted.form_id
    saved = Saved(code or "")
    if whole.changes_something:
        saved = desk.save_draft(code, form_id, whole.draft.changes, whole.job)
    return desk.save_revision(saved.code, form_id, whole.issued_by) if whole.is_to_be_frozen else saved


def _field_saved(desk: Desk, code: str | None, fact: str, posted: Posted) -> Response:
    if fact == "job":
        name = name_in(posted, fact)
        if isinstance(name, FactError):
            return _refused_in_words(problems_of((name,)))
        return _told(posted, desk.save_draft(code, posted.form_id, {}, name))
    if fact not in FACTS:
        raise HTTPException(404)
    changes = one_field(posted, fact, is_new=code is None)
    if isinstance(changes, FactError):
        return _refused_in_words(problems_of((changes,)))
    return _told(posted, desk.save_draft(code, posted.form_id, changes, None))


def _told(posted: Posted, saved: Saved, in_hand: str = "") -> Response:
    if posted.wants_json:
        return JSONResponse(saved.as_json())
    place = f"#{in_hand}" if in_hand else ""
    return RedirectResponse(BuildHead(saved.code).address + place, status_code=303)


def _refused(desk: Desk, whole: Sent, problems: tuple[Problem, ...]) -> Response:
    if whole.posted.wants_json:
        return _refused_in_words(problems)
    page = whole.sight.page(desk.site.checker, whole.head(desk.head(whole.record)), problems)
    return desk.site.show(page, status_code=422)


def _refused_in_words(problems: tuple[Problem, ...]) -> Response:
    one = NOT_SAVED.format(message=problems[0].message)
    told = one if len(problems) == 1 else NOT_SAVED_MANY.format(count=len(problems))
    faults = [{"fact": each.fact, "detail": each.message} for each in problems]
    return problem(422, told, errors=faults)
