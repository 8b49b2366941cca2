"""A whole counter sheet as it was sent: what it changes of its build, and what on it can't stand."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace

from app.facts.answers import Answers
from app.facts.fact import ChoiceFact
from app.facts.form_reader import TOOL_SUFFIX
from app.facts.messages import TOO_LONG
from app.facts.plain_text import cut
from app.facts.reading import FactError
from app.facts.table import FACTS
from app.store.records import BuildRecord
from app.web.counter_page import BuildHead, Problem, Sight, problems_of
from app.web.draft import Draft, answers_of, changed
from app.web.posted import Posted
from app.web.written import NOT_KNOWN, NOTHING, Sheet, posted_sheet, sheet_from_json, stored_sheet

LONGEST_NAME = 60
NAMES = {"job": "Name or job number", "issued_by": "Issued by"}
FIRST_FACT = next(iter(FACTS))
NOTHING_YET = Problem(FIRST_FACT, "Nothing is answered yet. Answer one fact, then save.")
SENT_BEFORE = Problem(
    FIRST_FACT, "This sheet was sent before with other answers. Look it over, then save it again."
)


@dataclass(frozen=True)
class Sent:
    """A sheet that was sent.

    record    the build that it is about, None for a new one
    job       the name or job number, None where the sheet leaves it as it is
    in_hand   the fact whose "?" or "Undo" was pressed, or empty
    problems  what has to be changed before anything is saved
    """

    record: BuildRecord | None
    posted: Posted
    fields: Mapping[str, str]
    draft: Draft
    job: str | None
    issued_by: str
    in_hand: str
    problems: tuple[Problem, ...]

    @property
    def changes_something(self) -> bool:
        return bool(self.draft.changes) or self.job is not None

    @property
    def is_to_be_frozen(self) -> bool:
        """Whether "Save" was pressed, rather than "Check" or the button of a field."""
        return self.posted.text("action") == "save" and not self.in_hand

    def head(self, kept: BuildHead) -> BuildHead:
        """What stands over the sheet, with the names as they were sent."""
        error = {each.fact: each.message for each in self.problems}
        return replace(
            kept,
            job=cut(self.posted.text("job")),
            job_error=error.get("job", ""),
            issued_by=cut(self.posted.text("issued_by")),
            issuer_error=error.get("issued_by", ""),
        )

    @property
    def sight(self) -> Sight:
        """The sheet as it was sent, to be shown again."""
        stored = stored_sheet(answers_of(self.record))
        sheet: Sheet = {**stored, **posted_sheet(self.fields)}
        return Sight(sheet, stored, self.draft.answers, self.draft.errors)


def sent(record: BuildRecord | None, posted: Posted) -> Sent:
    """Read a whole sheet."""
    stored = answers_of(record)
    in_hand, fields = _pressed(posted, stored)
    shown = sheet_from_json(posted.text("shown"))
    draft = changed(stored, fields, shown)
    job, issued_by = name_in(posted, "job"), name_in(posted, "issued_by")
    faults = tuple(name for name in (job, issued_by) if isinstance(name, FactError))
    return Sent(
        record,
        posted,
        fields,
        draft,
        job if isinstance(job, str) and _is_new(job, record, shown) else None,
        issued_by if isinstance(issued_by, str) else "",
        in_hand,
        problems_of((*draft.errors, *faults)),
    )


def name_in(posted: Posted, field: str) -> str | FactError:
    """A name in one line, or the error where it is too long."""
    name = " ".join(posted.text(field).split())
    if len(name) <= LONGEST_NAME:
        return name
    message = TOO_LONG.format(label=NAMES[field], most=LONGEST_NAME, length=len(name))
    return FactError(field, name[:LONGEST_NAME], message)


def _is_new(job: str, record: BuildRecord | None, shown: Sheet) -> bool:
    kept = (record.job or "") if record else ""
    return job not in {kept, shown.get("job", NOTHING).typed}


def _pressed(posted: Posted, stored: Answers) -> tuple[str, Mapping[str, str]]:
    """Carry out the button of a single field, which without a script sends the whole sheet."""
    not_known, undone = posted.text("not_known"), posted.text("undo")
    if not_known in FACTS:
        return not_known, {**posted.fields, not_known: NOT_KNOWN}
    if undone not in FACTS:
        return "", posted.fields
    kept = stored_sheet(stored).get(undone, NOTHING)
    fields = {**posted.fields, undone: kept.typed, undone + TOOL_SUFFIX: kept.tool}
    if isinstance(FACTS[undone], ChoiceFact) and kept == NOTHING:
        del fields[undone]
    return undone, fields
