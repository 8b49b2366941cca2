"""A page and its template agree: it uses exactly the fields of its page, and writes no style or script."""

from __future__ import annotations

import inspect
import re
from dataclasses import fields
from pathlib import Path

import pytest
from jinja2 import meta, nodes

from app.web.app import create_app
from app.web.page import Fragment, Page
from app.web.settings import PROJECT, Settings
from app.web.site import Site, make_templates
from tests.web.specimen.specimen_page import FOLDER, SheetSpecimenPage, SpecimenPage, specimen, specimen_site

TEMPLATES = PROJECT / "templates"
FOR_ALL_PAGES = {"frame"}
SPECIMENS = (SpecimenPage, SheetSpecimenPage)
NEVER_SAID = re.compile(
    r"\b(please|sorry|invalid|valid|illegal|forbidden|oops|error occurred|field|input|required|submit"
    r"|click here|simply|just)\b",
    re.IGNORECASE,
)


def parts_of(kind: type[Fragment]) -> list[type[Fragment]]:
    """Every page and fragment that has a template."""
    found = [each for child in kind.__subclasses__() for each in [child, *parts_of(child)]]
    return [each for each in found if not inspect.isabstract(each) and hasattr(each, "template")]


@pytest.fixture
def site() -> Site:
    site: Site = create_app(Settings()).state.site
    return specimen_site(site)


@pytest.mark.parametrize("part", parts_of(Fragment), ids=lambda part: part.__name__)
def test_a_template_uses_exactly_the_fields_of_its_page(part: type[Fragment]) -> None:
    templates = make_templates(TEMPLATES, FOLDER)
    assert templates.loader
    source = templates.loader.get_source(templates, part.template)[0]
    tree = templates.parse(source)
    imported = {
        name if isinstance(name, str) else name[1]
        for line in tree.find_all(nodes.FromImport)
        for name in line.names
    }

    used = meta.find_undeclared_variables(tree) - imported - FOR_ALL_PAGES

    assert used == {field.name for field in fields(part)}


@pytest.mark.parametrize("path", sorted(TEMPLATES.rglob("*.html")), ids=lambda path: path.stem)
def test_no_template_writes_style_or_script_into_the_page(path: Path) -> None:
    source = path.read_text(encoding="utf-8")

    assert not re.search(r"<style|\sstyle=|\son[a-z]+=|javascript:|<script(?![^>]*\ssrc=)", source)


@pytest.mark.parametrize("path", sorted(TEMPLATES.rglob("*.html")), ids=lambda path: path.stem)
def test_no_template_says_a_word_we_never_say(path: Path) -> None:
    source = path.read_text(encoding="utf-8")
    text = re.sub(r"{#.*?#}|{%.*?%}|{{.*?}}|<[^>]*>", " ", source, flags=re.DOTALL)

    assert not NEVER_SAID.search(text)


@pytest.mark.parametrize("kind", SPECIMENS)
def test_every_component_is_shown_in_every_state(kind: type[SpecimenPage], site: Site) -> None:
    html = site.render(specimen(kind))

    assert html.count("<h1>") == 1
    for state in ("fit", "care", "close", "open", "gap", "no", "skip"):
        assert f'data-state="{state}"' in html


def test_a_mark_in_a_state_that_isnt_there_is_an_error(site: Site) -> None:
    template = site.templates.from_string('{% from "components/mark.html" import mark %}{{ mark("green") }}')

    with pytest.raises(Exception, match="green"):
        template.render()


@pytest.mark.parametrize("kind", SPECIMENS)
def test_everything_that_is_referred_to_by_id_is_there_once(kind: type[SpecimenPage], site: Site) -> None:
    html = site.render(specimen(kind))
    ids = re.findall(r'\sid="([^"]+)"', html)
    lists = re.findall(r'\s(?:for|aria-describedby|aria-labelledby)="([^"]+)"', html)
    referred = {name for names in lists for name in names.split()}

    assert len(ids) == len(set(ids))
    assert referred <= set(ids)


def test_what_was_typed_comes_back_and_is_escaped(site: Site) -> None:
    page = specimen(SpecimenPage)
    html = site.render(page)

    assert 'value="wide"' in html
    assert "Select the kind of brake, or I don&#39;t know" in html
    assert issubclass(type(page), Page)
