"""Saves a build under a code, and gives it back."""

from __future__ import annotations

from fastapi import APIRouter, Request
from pydantic import TypeAdapter
from starlette.concurrency import run_in_threadpool
from starlette.responses import Response

from app.report.build import Checker
from app.store import builds
from app.store.database import Store
from app.store.errors import FormReusedError, UnknownBuildError
from app.store.records import Meta, RevisionRecord
from app.web.api.build_record import SavedBuild, WholeBuild, saved_build, whole_build
from app.web.api.checks import NOT_NOW, the_checker
from app.web.api.documented import ASKED_AGAIN, JSON, KEY, OF_BODY, REPEATED, SAVED, answered, kept, taken
from app.web.api.order import Order, read_key, read_order
from app.web.api.refused import RefusedError
from app.web.api.revalidated import FOR_ONE, revalidated
from app.web.api.sent import sent_json
from app.web.build_address import CodeInAddress
from app.web.current import CurrentSite, CurrentStore
from app.web.draft import stored_form
from app.web.snapshot import snapshot_of

router = APIRouter(tags=["builds"])

SAVED_BUILD = TypeAdapter(SavedBuild)
WHOLE_BUILD = TypeAdapter(WholeBuild)
CREATED, NOT_FOUND, CONFLICT = 201, 404, 409
KEY_REUSED = "This Idempotency-Key was used for another build before. Send this one under a new key."
# No id of a form begins so, and no key can be taken for one.
OF_A_PROGRAM = "api "


@router.post(
    "/builds",
    status_code=CREATED,
    operation_id="save_build",
    summary="Save a build",
    responses=answered(
        "SavedBuild",
        "The build is kept under this code.",
        status=CREATED,
        headers=SAVED,
        refusals=(*OF_BODY, CONFLICT, NOT_NOW),
    ),
    openapi_extra={**taken("NewBuild"), **REPEATED},
)
async def save_build(request: Request, site: CurrentSite, store: CurrentStore) -> Response:
    """Judge a bike as a check does, and keep it with its report as revision A of a new build.

    The code is what customer and shop know the build by. Repeat a request that you heard no answer to under
    the same Idempotency-Key: it is done once, and answered the same each time.
    """
    checker = the_checker(site)
    order, key = read_order(await sent_json(request)), read_key(request)
    code, revision = await run_in_threadpool(_save, store, checker, order, key)
    headers = {"Location": f"/api/v1/builds/{code}", KEY: key}
    body = SAVED_BUILD.dump_json(saved_build(code, revision))
    return Response(body, status_code=CREATED, headers=headers, media_type=JSON)


@router.get(
    "/builds/{code}",
    operation_id="show_build",
    summary="A saved build",
    responses=kept("WholeBuild", "The build as it stands.", refusals=(NOT_FOUND,)),
    openapi_extra=ASKED_AGAIN,
)
async def show_build(request: Request, store: CurrentStore, code: CodeInAddress) -> Response:
    """The facts of a build as given and as read, its revisions, and the latest one with its report.

    The code may be written in any case, with or without its hyphen. Names of people are never shown here.
    """
    build = builds.load(store, code)
    if build is None:
        raise UnknownBuildError(code)

    return revalidated(request, WHOLE_BUILD.dump_json(whole_build(build)), FOR_ONE)


def _save(store: Store, checker: Checker, order: Order, key: str) -> tuple[str, RevisionRecord]:
    """The code and the revision of a build that is saved now, or was under this key.

    Raises RefusedError where the key was used for another build.
    """
    form_id = OF_A_PROGRAM + key
    try:
        code = builds.save_draft(
            store, None, form_id, stored_form([*order.answers.values()]), Meta(order.job)
        )
        number = builds.save_revision(
            store, code, form_id, snapshot_of(checker, order.answers, order.issued_by)
        )
        revision = builds.revision(store, code, number)
    except FormReusedError as reused:
        raise RefusedError(CONFLICT, KEY_REUSED) from reused
    # The store tells a repeat by facts and job alone.
    if revision is None or revision.issued_by != order.issued_by:
        raise RefusedError(CONFLICT, KEY_REUSED)
    return code, revision
