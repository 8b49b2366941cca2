"""The tables of standards from their YAML, with every fault at once."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any

from pydantic import ValidationError

from app.catalogue.cross_checks import repeated_ids
from app.catalogue.fault import Fault, StandardsFaults, shown
from app.catalogue.fault_words import faults_of
from app.catalogue.standard_row import Row
from app.catalogue.standards import TABLES, Standards
from app.catalogue.yaml_text import read_yaml

FILES = tuple(f"{table}.yaml" for table in TABLES)


def load_standards(texts: Mapping[str, str]) -> Standards:
    """The tables in these texts by file name; each must be there. Raises StandardsFaults."""
    faults: list[Fault] = []
    tables: dict[str, Any] = {}
    for table, model in TABLES.items():
        file = f"{table}.yaml"
        if file not in texts:
            faults.append(Fault(file, "", "", "is missing"))
            continue
        tables[table] = tuple(_rows(file, texts[file], model, faults))
    known = ", ".join(FILES)
    faults += (Fault(file, "", "", f"is no table; those are {known}") for file in texts if file not in FILES)
    if faults:
        raise StandardsFaults(faults)
    return Standards(**tables)


def _rows(file: str, text: str, model: type[Row], faults: list[Fault]) -> Iterator[Row]:
    content, unreadable = read_yaml(file, text)
    faults += unreadable
    if unreadable:
        return
    if not isinstance(content, list) or not content:
        faults.append(Fault(file, "", "", f"must be a list of rows, not {shown(content)}"))
        return
    named = [str(entry["id"]) for entry in content if isinstance(entry, dict) and "id" in entry]
    faults += repeated_ids(file, named)
    for position, entry in enumerate(content, start=1):
        name = str(entry["id"]) if isinstance(entry, dict) and "id" in entry else f"entry {position}"
        try:
            row = model.model_validate(entry)
        except ValidationError as error:
            faults += faults_of(error, file, name, model)
            continue
        faults += (Fault(file, name, f"less_sure.{field}", message) for field, message in _doubts(row))
        yield row


def _doubts(row: Row) -> Iterator[tuple[str, str]]:
    fields: Mapping[str, object] = type(row).model_fields
    for field in row.less_sure:
        if field not in fields or field in Row.model_fields:
            yield field, "is no value of this row"
