"""The command that finds every fault of a catalogue."""

from __future__ import annotations

import sys
from pathlib import Path

from pydantic import ValidationError

from app.catalogue.catalogue import KINDS, Catalogue
from app.catalogue.fault import TextFaults
from app.catalogue.text import load_catalogue
from app.cli.said import complain
from app.cli.screen import screen, table
from app.web.parts_folder import texts_in
from app.web.settings import Settings

NO_FILES = "{folder} is no folder with YAML files"


def lint(folder: Path | None) -> int:
    """Say what a catalogue holds, or name each fault by file, part and field; 1 if there is one."""
    try:
        catalogue = _catalogue_in(folder or Settings().catalogue_folder)
    except TextFaults as faults:
        _show_faults(faults)
        return 1
    except (ValidationError, OSError) as problem:
        complain("Nothing was read", problem)
        return 1
    counts = ", ".join(f"{len(catalogue.parts(plural))} {plural.replace('_', ' ')}" for plural in KINDS)
    screen(sys.stdout).print(f"No fault. Revision {catalogue.revision}: {counts}.")
    return 0


def _catalogue_in(folder: Path) -> Catalogue:
    texts = texts_in(folder)
    if not texts:
        raise FileNotFoundError(NO_FILES.format(folder=folder))
    return load_catalogue(dict(texts))


def _show_faults(faults: TextFaults) -> None:
    rows = ((each.file, each.part, each.field, each.message) for each in faults.faults)
    console = screen(sys.stderr)
    console.print(table(("File", "Part", "Entry", "What is wrong"), rows))
    count = len(faults.faults)
    console.print(f"{count} {'fault' if count == 1 else 'faults'}. Nothing was imported.")
