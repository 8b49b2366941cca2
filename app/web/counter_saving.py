"""What the counter sheet saves: a draft field by field or all at once, and revisions of it."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Annotated

from fastapi import Depends

from app.facts.answers import Answer
from app.facts.form_reader import TOOL_SUFFIX
from app.facts.reading import FactError, read_answer
from app.facts.table import FACTS
from app.store import builds
from app.store.database import Store
from app.store.errors import UnknownBuildError
from app.store.records import BuildRecord, Meta, revision_letter
from app.web.counter_page import BuildHead
from app.web.current import CurrentSite, CurrentStore
from app.web.draft import Changes, answers_of, stored_form
from app.web.posted import Posted
from app.web.shop_time import clock, day_and_clock
from app.web.site import Site
from app.web.snapshot import snapshot_of

SAVED = "Saved {time}"
SAVED_AS = "Saved {time} as revision {letter}"


@dataclass(frozen=True, slots=True)
class Saved:
    """What was saved, how the sheet says so, and when, as the title block has it.

    revision  its letter, empty where only the draft was saved
    """

    code: str = ""
    said: str = ""
    moment: str = ""
    revision: str = ""

    def as_json(self) -> dict[str, str]:
        """What a script needs to go on from here."""
        head = BuildHead(self.code)
        return {
            "code": self.code,
            "address": head.address,
            "result": head.result,
            "sheet": head.sheet,
            "copies": head.copies,
            "heading": head.heading,
            "said": self.said,
            "moment": self.moment,
            "revision": self.revision,
        }


@dataclass(frozen=True, slots=True)
class Desk:
    """The counter of a shop: its site and its store. Every method may raise StoreError."""

    site: Site
    store: Store

    def found(self, code: str) -> BuildRecord:
        """The build with this code. Raises UnknownBuildError."""
        record = builds.load(self.store, code)
        if record is None:
            raise UnknownBuildError(code)
        return record

    def head(self, record: BuildRecord | None) -> BuildHead:
        """What stands over the sheet of a build."""
        if record is None:
            return BuildHead()
        latest = record.latest
        return BuildHead(
            code=record.code,
            revision=latest.letter if latest else "",
            saved=day_and_clock(record.changed_at, self.site.settings.zone),
            job=record.job or "",
            kept_job=record.job or "",
            issued_by=latest.issued_by if latest else "",
        )

    def save_draft(self, code: str | None, form_id: str, changes: Changes, job: str | None) -> Saved:
        """Save these facts of a build, a new one where there is no code yet; a job of None stays as it is."""
        kept_code = builds.save_draft(self.store, code, form_id, changes, Meta(job))
        return self._saved(kept_code)

    def save_revision(self, code: str, form_id: str, issued_by: str) -> Saved:
        """Freeze a build as it is stored now; without a catalogue to judge by, the draft has to do."""
        if self.site.checker is None:
            return self._saved(code)
        snapshot = snapshot_of(self.site.checker, answers_of(self.found(code)), issued_by)
        letter = revision_letter(builds.save_revision(self.store, code, form_id, snapshot))
        return self._saved(code, letter)

    def _saved(self, code: str, letter: str = "") -> Saved:
        now, zone = self.store.now(), self.site.settings.zone
        said = (SAVED_AS if letter else SAVED).format(time=clock(now, zone), letter=letter)
        return Saved(code, said, day_and_clock(now, zone), letter)


async def desk(site: CurrentSite, store: CurrentStore) -> Desk:
    """The counter that a request comes to."""
    return Desk(site, store)


AtTheDesk = Annotated[Desk, Depends(desk)]


def one_field(posted: Posted, fact: str, *, is_new: bool) -> Changes | FactError:
    """What one field changes of a build. An empty field takes its answer away, but makes no new build."""
    typed, tool = posted.text(fact), posted.text(fact + TOOL_SUFFIX).strip()
    if not typed.strip() and not is_new:
        return {fact: None}
    read = read_answer(FACTS[fact], typed, tool)
    return stored_form([read]) if isinstance(read, Answer) else read
