"""The command that finds every fault of a catalogue."""

from __future__ import annotations

import sys
from pathlib import Path

from rich.console import Console
from rich.table import Table

from app.catalogue.catalogue import KINDS
from app.catalogue.fault import CatalogueFaults
from app.cli.seed import read_catalogue
from app.web.settings import Settings


def lint(folder: Path | None) -> int:
    """Say what a catalogue holds, or name each fault by file, part and field; 1 if there is one."""
    where = folder if folder is not None else Settings().catalogue_folder
    try:
        catalogue = read_catalogue(where)
    except CatalogueFaults as faults:
        _show_faults(faults)
        return 1
    except OSError as problem:
        print(f"Nothing was read: {problem}", file=sys.stderr)  # noqa: T201
        return 1
    counts = ", ".join(f"{len(catalogue.parts(plural))} {plural.replace('_', ' ')}" for plural in KINDS)
    Console().print(f"No fault. Revision {catalogue.revision}: {counts}.", highlight=False)
    return 0


def _show_faults(faults: CatalogueFaults) -> None:
    table = Table("File", "Part", "Entry", "What is wrong")
    for fault in faults.faults:
        table.add_row(fault.file, fault.part, fault.field, fault.message)
    console = Console(stderr=True)
    console.print(table)
    count = len(faults.faults)
    console.print(f"{count} {'fault' if count == 1 else 'faults'}. Nothing was imported.", highlight=False)
