"""Reads the catalogue and the tables of standards from their folders."""

from __future__ import annotations

from pathlib import Path

from app.catalogue.catalogue import Catalogue
from app.catalogue.standards import Standards
from app.catalogue.standards_text import load_standards
from app.catalogue.text import load_catalogue
from app.report.build import Checker


def texts_in(folder: Path) -> dict[str, str]:
    """Every YAML file of a folder by its name. Errors: FileNotFoundError for a folder that isn't there."""
    if not folder.is_dir():
        raise FileNotFoundError(f"{folder} is not a folder")
    return {path.name: path.read_text(encoding="utf-8") for path in sorted(folder.glob("*.yaml"))}


def read_catalogue(folder: Path) -> Catalogue:
    """The catalogue in a folder. Errors: CatalogueFaults with every fault."""
    return load_catalogue(texts_in(folder))


def read_standards(folder: Path) -> Standards:
    """The tables in a folder. Errors: StandardsFaults with every fault."""
    return load_standards(texts_in(folder))


def read_checker(catalogue_folder: Path, standards_folder: Path) -> Checker:
    """Everything that a check needs."""
    return Checker.of(read_catalogue(catalogue_folder), read_standards(standards_folder))
