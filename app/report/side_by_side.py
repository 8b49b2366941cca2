"""Kits beside each other: the best combination of each hub with all its findings, judged on one bike."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from app.catalogue.catalogue import KINDS
from app.catalogue.part import Part
from app.facts.answers import Answers
from app.report.build import Checker
from app.report.findings import FindingsOf
from app.report.report import Finding, KitReport
from app.rules.rule import PART_KINDS

_PLURALS = {getattr(model, "kind", ""): plural for plural, model in KINDS.items()}


@dataclass(frozen=True, slots=True)
class Column:
    """One kit: its verdict, the names of its parts by kind, and its findings in the order of the register."""

    kit: KitReport
    parts: dict[str, str]
    findings: tuple[Finding, ...]


def side_by_side(checker: Checker, answers: Answers, kits: Sequence[KitReport]) -> tuple[Column, ...]:
    """The columns of these kits; one with a part that this catalogue doesn't have is left out."""
    findings = FindingsOf(checker.benches(answers), answers)
    by_id = {kind: {part.id: part for part in checker.catalogue.parts(_PLURALS[kind])} for kind in PART_KINDS}
    columns = []
    for kit in kits:
        parts = _parts(kit.key, by_id)
        if parts is not None:
            names = {kind: part.name for kind, part in zip(PART_KINDS, parts, strict=True)}
            columns.append(Column(kit, names, findings.about(parts)))
    return tuple(columns)


def _parts(key: str, by_id: dict[str, dict[str, Part]]) -> tuple[Part, ...] | None:
    found = [by_id[kind].get(part_id) for kind, part_id in zip(PART_KINDS, key.split("+"), strict=False)]
    known = tuple(part for part in found if part is not None)
    return known if len(known) == len(PART_KINDS) else None
