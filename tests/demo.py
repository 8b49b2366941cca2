"""The demo catalogue, the tables and the demo bikes, read once for all tests."""

from __future__ import annotations

from functools import cache
from pathlib import Path

from app.catalogue.catalogue import KINDS, Catalogue
from app.catalogue.part import Part
from app.catalogue.standards import Standards
from app.catalogue.standards_text import load_standards
from app.catalogue.text import load_catalogue

SEED_DATA = Path(__file__).parent.parent / "seed_data"


def texts_in(folder: str) -> dict[str, str]:
    """Every YAML file of a folder of seed data, by its name."""
    return {path.name: path.read_text("utf-8") for path in sorted((SEED_DATA / folder).glob("*.yaml"))}


@cache
def demo_catalogue() -> Catalogue:
    """The catalogue that the application starts with."""
    return load_catalogue(texts_in("catalogue"))


@cache
def demo_standards() -> Standards:
    """The tables of standards."""
    return load_standards(texts_in("standards"))


@cache
def parts_of_kind(kind: str) -> tuple[Part, ...]:
    """All demo parts of a kind, by the kind's name in the singular."""
    plural = next(plural for plural, model in KINDS.items() if getattr(model, "kind", "") == kind)
    return demo_catalogue().parts(plural)
