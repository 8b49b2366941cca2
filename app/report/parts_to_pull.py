"""The list a shop pulls from the shelf: the combination's own parts, and those chosen to go with it."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from app.catalogue.catalogue import Catalogue
from app.catalogue.part import Part
from app.catalogue.standards import Standards
from app.facts.answers import Answers
from app.report.chosen import chosen_parts
from app.report.combination import Combination
from app.report.report import PartLine
from app.rules.rule import PART_KINDS


def _own(parts: Sequence[Part]) -> Iterator[PartLine]:
    for kind, part in zip(PART_KINDS, parts, strict=True):
        yield PartLine(kind, part.id, part.name, getattr(part, "arms", 1), part.note)


def parts_to_pull(
    parts: Sequence[Part], answers: Answers, catalogue: Catalogue, standards: Standards
) -> tuple[PartLine, ...]:
    """Every part of a combination with its quantity, then rim, spacers and adapters where they are needed."""
    chosen = chosen_parts(Combination.of(parts), answers, catalogue, standards)
    return (*_own(parts), *chosen)
