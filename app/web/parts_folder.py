"""Reads the catalogue and the tables of standards from their folders, and makes them ready for checks."""

from __future__ import annotations

from functools import lru_cache
from pathlib import Path
from typing import TypeAlias

from app.catalogue.fault import Fault, TextFaults
from app.catalogue.standards_text import load_standards
from app.catalogue.text import load_catalogue
from app.report.build import Checker

Texts: TypeAlias = tuple[tuple[str, str], ...]


def read_checker(catalogue_folder: Path, standards_folder: Path) -> Checker | None:
    """What checks are made with; None without a catalogue. Raises TextFaults, with every fault."""
    catalogue = texts_in(catalogue_folder)
    return _checker_of(catalogue, texts_in(standards_folder)) if catalogue else None


def texts_in(folder: Path) -> Texts:
    """Every YAML file of a folder by its name. Raises TextFaults for one that isn't text."""
    return tuple((path.name, _text_of(path)) for path in sorted(folder.glob("*.yaml")))


def _text_of(path: Path) -> str:
    try:
        return path.read_text(encoding="utf-8")
    except UnicodeDecodeError as fault:
        message = f"is no text in UTF-8: byte {fault.start + 1} can't be read"
        raise TextFaults([Fault(path.name, "", "", message)]) from fault


@lru_cache(maxsize=2)
def _checker_of(catalogue: Texts, standards: Texts) -> Checker:
    # Kept, because it takes longer than the rest of a start and a test run starts hundreds of times.
    return Checker.of(load_catalogue(dict(catalogue)), load_standards(dict(standards)))
