"""Builds of demo bikes in the store of a shop: as drafts, and as revisions that froze the report on them."""

from __future__ import annotations

from dataclasses import replace
from functools import cache
from itertools import count

from fastapi import FastAPI

from app.facts.answers import Answers
from app.facts.answers_json import answers_to_json
from app.report.build import Checker
from app.store import builds
from app.store.database import Store
from app.web.site import Site
from app.web.snapshot import snapshot_of
from tests.demo import demo_catalogue, demo_standards

FORM_IDS = (f"form-{number}" for number in count(1))
OLDER = "0000000000ff"


def draft(app: FastAPI, answers: Answers, code: str | None = None) -> str:
    """Save these answers as a draft; the code of the build."""
    kept = answers_to_json(answers)
    return builds.save_draft(app.state.store, code, next(FORM_IDS), kept)  # type: ignore[arg-type]


def revised(
    app: FastAPI,
    answers: Answers,
    code: str | None = None,
    *,
    checker: Checker | None = None,
    issued_by: str = "Sam",
) -> str:
    """Save these answers and freeze them in a revision, judged by this checker or by the shop's."""
    site: Site = app.state.site
    store: Store = app.state.store
    checker = checker or site.checker
    assert checker
    code = draft(app, answers, code)
    builds.save_revision(store, code, next(FORM_IDS), snapshot_of(checker, answers, issued_by))
    return code


@cache
def older_checker() -> Checker:
    """The demo catalogue as it might have been once: no axle set was made for more than 140 mm."""
    catalogue = demo_catalogue()
    narrow = tuple(each for each in catalogue.axle_sets if each.over_locknut_mm.high < 140_000)
    return Checker.of(replace(catalogue, axle_sets=narrow, revision=OLDER), demo_standards())
