"""What a saved revision no longer tells: the catalogue, the rules or the facts have moved on since."""

from __future__ import annotations

from app.report.build import Checker
from app.report.changes import changed_facts
from app.web.draft import answers_of
from app.web.shown_build import ShownBuild

CATALOGUE = "The catalogue changed since this check (revision {before}, now {after})."
RULES = "The rules changed since this check (revision {before}, now {after})."
ONE_FACT = "One fact changed since revision {letter} was saved."
FACTS = "{count} facts changed since revision {letter} was saved."

FRESH = "Judged just now. No revision is saved yet."
FRESH_BESIDE = "Judged just now. Revision {letter} keeps the words that were saved."


def moved_on(shown: ShownBuild, checker: Checker | None) -> tuple[str, ...]:
    """What has changed since the revision that is shown; nothing for a draft, which is judged now."""
    if shown.revision is None or checker is None:
        return ()
    report, notes = shown.report, []
    if report.catalogue_revision != checker.catalogue.revision:
        notes.append(CATALOGUE.format(before=report.catalogue_revision, after=checker.catalogue.revision))
    elif report.rules_revision != checker.rules_revision:
        notes.append(RULES.format(before=report.rules_revision, after=checker.rules_revision))
    count = _facts_changed(shown)
    if count:
        words = ONE_FACT if count == 1 else FACTS
        notes.append(words.format(count=count, letter=shown.letter))
    return tuple(notes)


def _facts_changed(shown: ShownBuild) -> int:
    latest = shown.record.latest
    if latest and latest is shown.revision and latest.facts == shown.record.facts:
        return 0  # the usual case, and reading the answers again costs more than the rest of the page
    return len(changed_facts(shown.answers, answers_of(shown.record)))


def judged_just_now(shown: ShownBuild) -> str:
    """That what is shown is no revision; nothing where it is one."""
    if shown.revision is not None:
        return ""
    latest = shown.record.latest
    return FRESH_BESIDE.format(letter=latest.letter) if latest else FRESH
