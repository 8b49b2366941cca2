"""Pages as frozen dataclasses: a template and exactly the values that it uses."""

from __future__ import annotations

from abc import ABC, abstractmethod
from dataclasses import dataclass, fields
from typing import ClassVar, Literal, TypeAlias

Density: TypeAlias = Literal["home", "counter", "sheet"]


@dataclass(frozen=True)
class Fragment:
    """A piece of HTML that htmx puts into a page: a template whose names are the fields, and nothing else."""

    template: ClassVar[str]

    def values(self) -> dict[str, object]:
        """What the template is given."""
        return {field.name: getattr(self, field.name) for field in fields(self)}


@dataclass(frozen=True, slots=True)
class TitleBlock:
    """What the ruled box at the foot of a page says, as shown; empty where there is nothing to say yet."""

    code: str = ""
    revision: str = ""
    catalogue: str = ""
    saved: str = ""


@dataclass(frozen=True)
class Page(Fragment, ABC):
    """A whole page. Its template extends frame.html and reads its fields, and `frame` that all pages share.

    scripts   files under static/ that this page loads, such as "vendor/htmx-4.0.1.min.js"
    density   home: read on a phone; counter: everything on one sheet; sheet: printed
    """

    scripts: ClassVar[tuple[str, ...]] = ()
    density: ClassVar[Density] = "home"

    @property
    @abstractmethod
    def heading(self) -> str:
        """The h1, and the title with the shop's name behind it. A property or a constant, never a field."""

    @property
    def has_errors(self) -> bool:
        """Whether something that was typed can't be read; the title then says so first."""
        return False

    @property
    def title_block(self) -> TitleBlock:
        """The code, revision and saving time of the build that is shown."""
        return TitleBlock()
