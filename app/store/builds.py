"""Saves and finds builds: a draft that is saved fact by fact, and revisions that are frozen for good."""

from collections.abc import Mapping
from dataclasses import asdict
from datetime import datetime
from typing import Any

from pydantic import JsonValue
from sqlalchemy import Select
from sqlalchemy import select as select_columns
from sqlalchemy.sql.roles import TypedColumnsClauseRole
from sqlmodel import Session, col, func, select

from app.store.catalogues import keep_within
from app.store.codes import new_code
from app.store.database import Store
from app.store.errors import UnknownBuildError
from app.store.form_ids import Form, once
from app.store.records import BuildRecord, Meta, RevisionRecord, RevisionSummary, Snapshot
from app.store.tables import Build, CatalogueText, DraftAnswer, Revision

_NO_META = Meta()

Columns = tuple[TypedColumnsClauseRole[Any], ...]

# Named as the fields of the records. A list doesn't need what was frozen, which is most of a row.
_SUMMARY: Columns = (
    col(Revision.number),
    col(Revision.state),
    col(Revision.combination_key),
    col(Revision.catalogue_number),
    col(CatalogueText.revision).label("catalogue_revision"),
    col(Revision.rules_revision),
    col(Revision.issued_by),
    col(Revision.saved_at),
)
_FROZEN: Columns = (col(Revision.facts), col(Revision.report))


def save_draft(
    store: Store, code: str | None, form_id: str, changes: Mapping[str, JsonValue], meta: Meta = _NO_META
) -> str:
    """Save these facts of a build and leave its others alone; the build's code.

    code     None makes a new build
    changes  fact name to answer; None takes the answer away

    The same form again is answered with the same code and done only once.
    Raises UnknownBuildError, FormReusedError, StoreError.
    """
    form = Form(form_id, "draft", [code, dict(changes), asdict(meta)])
    now = store.now()
    with store.writing() as session:
        return once(session, form, now, lambda: _save_draft(session, code, changes, meta, now))


def save_revision(store: Store, code: str, form_id: str, snapshot: Snapshot) -> int:
    """Freeze a build as it was judged; the number of the revision, counted from 1.

    The same form again is answered with the same number. The draft stays as it is.
    Raises UnknownBuildError, FormReusedError, StoreError.
    """
    form = Form(form_id, "revision", code)
    now = snapshot.saved_at or store.now()
    with store.writing() as session:
        return int(once(session, form, now, lambda: _save_revision(session, code, snapshot, now)))


def load(store: Store, code: str) -> BuildRecord | None:
    """The build with this code as it stands now, or None."""
    with store.reading() as session:
        build = _find(session, code)
        if build is None:
            return None
        answers = session.exec(select(DraftAnswer).where(DraftAnswer.build_id == build.id)).all()
        summaries = _summaries(session, build)
        return BuildRecord(
            code=build.code,
            job=build.job,
            created_at=build.created_at,
            changed_at=build.changed_at,
            facts={row.fact: row.answer for row in answers},
            fact_saved_at={row.fact: row.saved_at for row in answers},
            revisions=summaries,
            latest=_revision(session, build, summaries[-1].number) if summaries else None,
        )


def revision(store: Store, code: str, number: int) -> RevisionRecord | None:
    """One revision of a build with all that it froze, or None."""
    with store.reading() as session:
        build = _find(session, code)
        return None if build is None else _revision(session, build, number)


def revisions(store: Store, code: str) -> tuple[RevisionSummary, ...]:
    """The revisions of a build in the order of their numbers; none for an unknown build."""
    with store.reading() as session:
        build = _find(session, code)
        return () if build is None else _summaries(session, build)


def _find(session: Session, code: str) -> Build | None:
    return session.exec(select(Build).where(Build.code == code)).first()


def _found(session: Session, code: str) -> Build:
    build = _find(session, code)
    if build is None:
        raise UnknownBuildError(code)
    return build


def _save_draft(
    session: Session, code: str | None, changes: Mapping[str, JsonValue], meta: Meta, now: datetime
) -> str:
    build = _new_build(session, now) if code is None else _found(session, code)
    build.changed_at = now
    if meta.job is not None:
        build.job = meta.job
    for fact, answer in changes.items():
        _save_answer(session, DraftAnswer(build_id=build.id, fact=fact, answer=answer, saved_at=now))
    return build.code


def _new_build(session: Session, now: datetime) -> Build:
    code = new_code()
    while _find(session, code) is not None:
        code = new_code()
    build = Build(code=code, created_at=now, changed_at=now)
    session.add(build)
    session.flush()
    return build


def _save_answer(session: Session, answer: DraftAnswer) -> None:
    if answer.answer is not None:
        session.merge(answer)
        return
    saved = session.get(DraftAnswer, (answer.build_id, answer.fact))
    if saved is not None:
        session.delete(saved)


def _save_revision(session: Session, code: str, snapshot: Snapshot, now: datetime) -> str:
    build = _found(session, code)
    last = session.exec(select(func.max(Revision.number)).where(Revision.build_id == build.id)).one()
    frozen = Revision(
        build_id=build.id,
        number=(last or 0) + 1,
        state=str(snapshot.report_json["state"]),
        facts=dict(snapshot.facts_json),
        combination_key=snapshot.combination_key,
        report=dict(snapshot.report_json),
        catalogue_number=keep_within(
            session, snapshot.catalogue_revision, snapshot.catalogue_text_by_file, now
        ),
        rules_revision=snapshot.rules_revision,
        issued_by=snapshot.issued_by,
        saved_at=now,
    )
    session.add(frozen)
    return str(frozen.number)


def _summaries(session: Session, build: Build) -> tuple[RevisionSummary, ...]:
    lines = _columns_of(build, _SUMMARY).order_by(col(Revision.number))
    rows = session.connection().execute(lines).mappings()
    return tuple(RevisionSummary(**row) for row in rows)


def _revision(session: Session, build: Build, number: int) -> RevisionRecord | None:
    whole = _columns_of(build, _SUMMARY + _FROZEN).where(col(Revision.number) == number)
    row = session.connection().execute(whole).mappings().first()
    return None if row is None else RevisionRecord(**row)


def _columns_of(build: Build, columns: Columns) -> Select[Any]:
    return (
        select_columns(*columns).join_from(Revision, CatalogueText).where(col(Revision.build_id) == build.id)
    )
