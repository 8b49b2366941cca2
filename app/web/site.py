"""What all pages of one shop share: its name, its templates, its static files and the catalogue in force."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from functools import cache
from pathlib import Path

from jinja2 import Environment, FileSystemLoader, StrictUndefined
from starlette.responses import HTMLResponse

from app.catalogue.catalogue import Catalogue
from app.report.build import Checker
from app.web.keyed_words import with_key
from app.web.page import Fragment, Page, TitleBlock
from app.web.settings import PROJECT, Settings
from app.web.static_files import STYLES, StaticFiles, read_static_files


@dataclass(frozen=True, slots=True)
class Frame:
    """What frame.html puts around every page."""

    title: str
    heading: str
    density: str
    shop_name: str
    shop_contact: str
    styles: str
    icon: str
    scripts: tuple[str, ...]
    title_block: TitleBlock


@dataclass(frozen=True, slots=True)
class Site:
    """Makes answers from pages. One for each application; a new catalogue makes a new one."""

    settings: Settings
    static: StaticFiles
    templates: Environment
    catalogue: Catalogue | None
    checker: Checker | None

    def render(self, part: Fragment) -> str:
        """The HTML of a page or of a fragment. A name that the template misses is an UndefinedError."""
        values = part.values()
        if isinstance(part, Page):
            values["frame"] = self._frame(part)
        return self.templates.get_template(part.template).render(values)

    def show(
        self, part: Fragment, *, status_code: int = 200, headers: Mapping[str, str] | None = None
    ) -> HTMLResponse:
        """The answer that carries a page or a fragment."""
        return HTMLResponse(self.render(part), status_code=status_code, headers=headers)

    def _frame(self, page: Page) -> Frame:
        title = f"{page.heading} – {self.settings.shop_name}"
        block = page.title_block
        return Frame(
            title=f"Error: {title}" if page.has_errors else title,
            heading=page.heading,
            density=page.density,
            shop_name=self.settings.shop_name,
            shop_contact=self.settings.shop_contact,
            styles=self.static.address(STYLES),
            icon=self.static.address("icon.svg"),
            scripts=tuple(self.static.address(script) for script in page.scripts),
            title_block=block if block.catalogue else replace(block, catalogue=self._catalogue_revision),
        )

    @property
    def _catalogue_revision(self) -> str:
        return self.catalogue.revision if self.catalogue else ""


@cache
def make_templates(*folders: Path) -> Environment:
    """Templates that escape everything and refuse names they weren't given, all compiled now."""
    environment = Environment(
        loader=FileSystemLoader(folders),
        autoescape=True,
        undefined=StrictUndefined,
        auto_reload=False,
        trim_blocks=True,
        lstrip_blocks=True,
        cache_size=-1,
    )
    environment.filters["with_key"] = with_key
    for name in environment.list_templates():
        environment.get_template(name)
    return environment


def make_site(settings: Settings, checker: Checker | None) -> Site:
    """The site of one shop with the catalogue that it starts with."""
    catalogue = checker.catalogue if checker else None
    return Site(settings, _static_files(), make_templates(PROJECT / "templates"), catalogue, checker)


@cache
def _static_files() -> StaticFiles:
    return read_static_files(PROJECT / "static")
