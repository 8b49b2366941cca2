"""What goes into the store and what comes out of it, as plain values that know nothing of tables."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import datetime

from pydantic import JsonValue

_LETTERS = 26


@dataclass(frozen=True)
class Meta:
    """What the shop writes on a build beside the bike's facts; None leaves what is there."""

    job: str | None = None


@dataclass(frozen=True)
class Snapshot:
    """A build as it is to be frozen in a revision.

    report_json must carry `state`, the verdict by which revisions are listed.
    saved_at is the store's own clock unless it is given.
    """

    facts_json: Mapping[str, JsonValue]
    combination_key: str | None
    report_json: Mapping[str, JsonValue]
    catalogue_revision: str
    catalogue_text_by_file: Mapping[str, str]
    rules_revision: str
    issued_by: str
    saved_at: datetime | None = None


@dataclass(frozen=True)
class RevisionSummary:
    """The line of a revision in a list."""

    number: int
    state: str
    combination_key: str | None
    catalogue_number: int
    catalogue_revision: str
    rules_revision: str
    issued_by: str
    saved_at: datetime

    @property
    def letter(self) -> str:
        return revision_letter(self.number)


@dataclass(frozen=True)
class RevisionRecord(RevisionSummary):
    """A revision with the facts and the report that it froze."""

    facts: Mapping[str, JsonValue]
    report: Mapping[str, JsonValue]


@dataclass(frozen=True)
class BuildRecord:
    """A build as it stands: the draft's facts, when each was saved, and its revisions, oldest first."""

    code: str
    job: str | None
    created_at: datetime
    changed_at: datetime
    facts: Mapping[str, JsonValue] = field(default_factory=dict)
    fact_saved_at: Mapping[str, datetime] = field(default_factory=dict)
    revisions: tuple[RevisionSummary, ...] = ()
    latest: RevisionRecord | None = None


def revision_letter(number: int) -> str:
    """The letter of a revision counted from 1: A to Z, then AA, AB and so on."""
    letters = ""
    while number > 0:
        number, place = divmod(number - 1, _LETTERS)
        letters = chr(ord("A") + place) + letters
    return letters
