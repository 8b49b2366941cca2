"""What is wrong in a text of the catalogue or the standards: where it stands, and what is allowed there."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

SHOWN_CHARACTERS = 60


@dataclass(frozen=True, slots=True, order=True)
class Fault:
    """One fault. `part` is the id, or 'entry 3' for want of one; empty part and field mean the whole file."""

    file: str
    part: str
    field: str
    message: str

    def __str__(self) -> str:
        where = ", ".join(place for place in (self.file, self.part, self.field) if place)
        return f"{where}: {self.message}"


class TextFaults(ValueError):  # noqa: N818 - it holds faults; each of them is one
    """A text that can't be used, with every fault found in it, in the order of file, part and field."""

    def __init__(self, faults: Iterable[Fault]) -> None:
        self.faults = tuple(sorted(set(faults)))
        super().__init__("\n".join(str(fault) for fault in self.faults))


class CatalogueFaults(TextFaults):
    """A catalogue that is not taken in: one fault is enough to leave all of it out."""


class StandardsFaults(TextFaults):
    """Tables of standards that can't be used."""


def shown(value: object) -> str:
    """A value as it is quoted in a message: never longer than a line."""
    text = repr(value) if isinstance(value, str) else str(value)
    return text if len(text) <= SHOWN_CHARACTERS else f"{text[:SHOWN_CHARACTERS]}…"
