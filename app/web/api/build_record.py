"""A saved build as JSON: its facts as given and as read, its revisions, and its latest report.

A code shows what belongs to the bike: whose job it is and who issued it are for the shop's own pages.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import datetime
from typing import Any

from pydantic import JsonValue

from app.facts.answers_json import KeptAnswer
from app.facts.json_reader import SECTIONS, section_of
from app.facts.table import FACTS
from app.store.records import BuildRecord, RevisionRecord, RevisionSummary
from app.web.api.in_unit import Number, in_unit


@dataclass(frozen=True, slots=True)
class GivenFact:
    """One fact of a build; neither low and high nor words where it is not known.

    given      the text as it was typed, or what stands for the JSON that was sent
    tool       how it was measured; empty where that wasn't said
    low, high  the reading with its uncertainty, in the fact's unit
    words      what is still possible of a choice
    """

    given: str
    tool: str
    low: Number | None
    high: Number | None
    words: tuple[str, ...] | None


@dataclass(frozen=True, slots=True)
class GivenFacts:
    """The facts by name, under bike and wish as they are sent."""

    bike: Mapping[str, GivenFact]
    wish: Mapping[str, GivenFact]


@dataclass(frozen=True, slots=True)
class RevisionLine:
    """A build as it was frozen once.

    number, letter  both count the revisions of the build: 1 is A
    state           the verdict: fit, care, close, open or no
    combination     the parts that were chosen, as in the report's `key`
    """

    number: int
    letter: str
    state: str
    combination: str | None
    catalogue_revision: str
    rules_revision: str
    saved_at: datetime


@dataclass(frozen=True, slots=True)
class Frozen:
    """A revision in full; the report has the shape that it had when it was saved."""

    revision: RevisionLine
    facts: GivenFacts
    report: Mapping[str, Any]


@dataclass(frozen=True, slots=True)
class SavedBuild:
    """What stays the same of a build that was just saved, however often the request is repeated."""

    code: str
    revision: RevisionLine
    verdict: str
    sentence: str


@dataclass(frozen=True, slots=True)
class WholeBuild:
    """A build as it stands: its facts now, all revisions from the first on, and the latest in full."""

    code: str
    created_at: datetime
    changed_at: datetime
    facts: GivenFacts
    revisions: tuple[RevisionLine, ...]
    latest: Frozen | None


def saved_build(code: str, revision: RevisionRecord) -> SavedBuild:
    """The answer to saving a build."""
    report = revision.report
    return SavedBuild(code, _line(revision), str(report["verdict"]), str(report["sentence"]))


def whole_build(build: BuildRecord) -> WholeBuild:
    """The answer to asking for a build."""
    return WholeBuild(
        code=build.code,
        created_at=build.created_at,
        changed_at=build.changed_at,
        facts=_facts(build.facts),
        revisions=tuple(map(_line, build.revisions)),
        latest=_frozen(build.latest) if build.latest else None,
    )


def _frozen(revision: RevisionRecord) -> Frozen:
    return Frozen(_line(revision), _facts(revision.facts), revision.report)


def _line(revision: RevisionSummary) -> RevisionLine:
    return RevisionLine(
        number=revision.number,
        letter=revision.letter,
        state=revision.state,
        combination=revision.combination_key,
        catalogue_revision=revision.catalogue_revision,
        rules_revision=revision.rules_revision,
        saved_at=revision.saved_at,
    )


def _facts(kept: Mapping[str, JsonValue]) -> GivenFacts:
    by_section: dict[str, dict[str, GivenFact]] = {section: {} for section in SECTIONS}
    # A fact that this version doesn't ask any more is kept, but there is no section to show it under.
    for name in (name for name in FACTS if name in kept):
        by_section[section_of(FACTS[name])][name] = _fact(KeptAnswer.model_validate(kept[name]))
    return GivenFacts(**by_section)


def _fact(kept: KeptAnswer) -> GivenFact:
    span = kept.span
    low, high = (None, None) if span is None else (in_unit(span.low), in_unit(span.high))
    return GivenFact(kept.typed, kept.tool, low, high, None if kept.words is None else tuple(kept.words))
