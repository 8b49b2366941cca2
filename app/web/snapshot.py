"""What a revision freezes of a build: its answers, the report on them, and the catalogue that judged."""

from __future__ import annotations

from collections.abc import Mapping
from functools import lru_cache
from typing import cast

from app.catalogue.catalogue import Catalogue
from app.catalogue.text import dump_catalogue
from app.facts.answers import Answers
from app.facts.answers_json import answers_to_json
from app.report.build import Checker
from app.report.report import report_to_json
from app.store.records import Snapshot


def snapshot_of(checker: Checker, answers: Answers, issued_by: str) -> Snapshot:
    """Everything that a revision keeps of a check, sentences included."""
    report = checker.report(answers)
    return Snapshot(
        facts_json=cast("dict[str, object]", answers_to_json(answers)),  # type: ignore[arg-type]
        combination_key=report.best.key if report.best else None,
        report_json=report_to_json(report),
        catalogue_revision=report.catalogue_revision,
        catalogue_text_by_file=_text_of(_ByRevision(checker.catalogue)),
        rules_revision=report.rules_revision,
        issued_by=issued_by,
    )


class _ByRevision:
    """A catalogue that equals every other with the same content."""

    def __init__(self, catalogue: Catalogue) -> None:
        self.catalogue = catalogue

    def __eq__(self, other: object) -> bool:
        return isinstance(other, _ByRevision) and other.catalogue.revision == self.catalogue.revision

    def __hash__(self) -> int:
        return hash(self.catalogue.revision)


@lru_cache(maxsize=2)
def _text_of(kept: _ByRevision) -> Mapping[str, str]:
    # Kept, because writing a catalogue out takes longer than judging a bike.
    return dump_catalogue(kept.catalogue)
