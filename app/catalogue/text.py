"""The catalogue as text: YAML in, all or nothing with every fault; YAML out, always spelled the same."""

from __future__ import annotations

import hashlib
from collections.abc import Iterator, Mapping
from typing import Any

from pydantic import BaseModel, ConfigDict, ValidationError

from app.catalogue.along_axle_checks import stacks_that_do_not_add_up
from app.catalogue.catalogue import KINDS, Catalogue
from app.catalogue.cross_checks import (
    links_that_lead_nowhere,
    parts_left_alone,
    repeated_ids,
    sensors_without_their_freehub,
)
from app.catalogue.fault import CatalogueFaults, Fault, shown
from app.catalogue.fault_words import faults_of
from app.catalogue.part import Line, Part
from app.catalogue.part_checks import part_faults
from app.catalogue.yaml_text import read_yaml, write_yaml

ABOUT_FILE = "about.yaml"
REVISION_CHARACTERS = 12
FILES = (ABOUT_FILE, *(f"{plural}.yaml" for plural in KINDS))


class _About(BaseModel):
    """What the file beside those of the kinds may hold."""

    model_config = ConfigDict(extra="forbid")

    about: Line


class _Reading:
    """Everything found so far while the files are read one after the other."""

    def __init__(self) -> None:
        self.faults: list[Fault] = []
        self.parts: dict[str, list[Part]] = {plural: [] for plural in KINDS}
        self.ids: dict[str, frozenset[str] | None] = dict.fromkeys(KINDS, frozenset())

    def file(self, plural: str, text: str) -> None:
        """Takes in the parts of one kind."""
        file = f"{plural}.yaml"
        content, faults = read_yaml(file, text)
        self.faults += faults
        self.ids[plural] = None
        if faults:
            return
        if not isinstance(content, list):
            self.faults.append(
                Fault(file, "", "", f"must be a list of parts, or [] for none, not {shown(content)}")
            )
            return
        named = [str(entry["id"]) for entry in content if isinstance(entry, dict) and "id" in entry]
        self.ids[plural] = frozenset(named)
        self.faults += repeated_ids(file, named)
        for position, entry in enumerate(content, start=1):
            self.entry(plural, position, entry)

    def entry(self, plural: str, position: int, entry: object) -> None:
        """Takes in one part, or its faults."""
        file, model = f"{plural}.yaml", KINDS[plural]
        name = str(entry["id"])[:40] if isinstance(entry, dict) and "id" in entry else f"entry {position}"
        try:
            part = model.model_validate(entry)
        except ValidationError as error:
            self.faults += faults_of(error, file, name, model)
            return
        self.faults += (Fault(file, name, field, message) for field, message in part_faults(part))
        self.parts[plural].append(part)

    def about(self, text: str) -> str:
        """The line that says whose catalogue it is."""
        content, faults = read_yaml(ABOUT_FILE, text)
        self.faults += faults
        if faults:
            return ""
        try:
            return _About.model_validate(content).about
        except ValidationError as error:
            self.faults += faults_of(error, ABOUT_FILE, "", _About)
            return ""

    def agreement(self) -> Iterator[Fault]:
        """What the parts have wrong among each other."""
        yield from links_that_lead_nowhere(self.parts, self.ids)
        yield from sensors_without_their_freehub(self.parts)
        yield from stacks_that_do_not_add_up(self.parts)
        if not self.faults:
            yield from parts_left_alone(self.parts)


def load_catalogue(texts: Mapping[str, str]) -> Catalogue:
    """The catalogue in these texts by file name; a file left out has no parts. Raises CatalogueFaults."""
    reading, about = _Reading(), ""
    for file, text in texts.items():
        if file == ABOUT_FILE:
            about = reading.about(text)
        elif file in FILES:
            reading.file(file.removesuffix(".yaml"), text)
        else:
            reading.faults.append(
                Fault(file, "", "", f"is no file of a catalogue; those are {', '.join(FILES)}")
            )
    reading.faults += reading.agreement()
    if reading.faults:
        raise CatalogueFaults(reading.faults)
    kinds: dict[str, Any] = {
        plural: tuple(sorted(parts, key=lambda part: part.id)) for plural, parts in reading.parts.items()
    }
    unnumbered = Catalogue(**kinds, about=about)
    return Catalogue(**kinds, about=about, revision=revision_of(dump_catalogue(unnumbered)))


def dump_catalogue(catalogue: Catalogue) -> dict[str, str]:
    """Every file of the catalogue in its one spelling: parts by id, fields in order, defaults left out."""
    texts = {ABOUT_FILE: write_yaml({"about": catalogue.about})} if catalogue.about else {}
    for plural in KINDS:
        parts = [part.model_dump(exclude_defaults=True) for part in catalogue.parts(plural)]
        texts[f"{plural}.yaml"] = write_yaml(parts)
    return texts


def revision_of(texts: Mapping[str, str]) -> str:
    """12 characters that change whenever a canonical text does."""
    digest = hashlib.sha256()
    for file in sorted(texts):
        digest.update(f"{file}\n{len(texts[file].encode())}\n{texts[file]}".encode())
    return digest.hexdigest()[:REVISION_CHARACTERS]
