"""The look: its colours stand in one file, are far enough apart, and every name that is used is declared."""

from __future__ import annotations

import re
from pathlib import Path
from typing import get_args

import pytest

from app.web.app import create_app
from app.web.page import Density
from app.web.settings import PROJECT, Settings
from app.web.site import Site
from tests.web.specimen.specimen_page import SheetSpecimenPage, SpecimenPage, specimen, specimen_site

CSS = PROJECT / "static" / "css"
SHEETS = sorted(CSS.glob("*.css"))
NAMES_ONLY = {
    "ruler__words",
    "finding__sentence",
    "finding__from",
    "field--choice",
}  # parts that look like any text
LAST_DIGIT = 0.07  # of the ratios below, which are cut or rounded to a tenth
COLOUR = re.compile(
    r"#[0-9a-f]{3,8}\b|\b(rgb|hsl|oklch|lab|color-mix)a?\(|:\s*(black|white|grey|gray|red|green|blue)\b",
    re.IGNORECASE,
)


def tokens() -> dict[str, str]:
    """The colours of the screen, by name."""
    on_screen = (CSS / "tokens.css").read_text(encoding="utf-8").partition("@media print")[0]
    return dict(re.findall(r"--([a-z-]+): #([0-9A-F]{6});", on_screen))


def brightness(colour: str) -> float:
    """Relative luminance of a colour (WCAG 2.2, definition of relative luminance)."""
    red, green, blue = (_linear(int(colour[place : place + 2], 16) / 255) for place in (0, 2, 4))
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def _linear(channel: float) -> float:
    return channel / 12.92 if channel <= 0.04045 else ((channel + 0.055) / 1.055) ** 2.4


def contrast(one: str, other: str) -> float:
    """Contrast ratio of two tokens (WCAG 2.2, definition of contrast ratio)."""
    colours = tokens()
    darker, lighter = sorted((brightness(colours[one]), brightness(colours[other])))
    return (lighter + 0.05) / (darker + 0.05)


@pytest.mark.parametrize(
    ("colour", "on_paper", "on_sheet"),
    [
        ("ink", 15.5, 16.5),
        ("soft", 7.1, 7.6),
        ("measure", 8.3, 8.9),
        ("line", 4.1, 4.3),
        ("fit", 5.3, 5.6),
        ("care", 5.4, 5.7),
        ("unset", 6.5, 6.9),
        ("no", 11.8, 12.5),
        ("skip", 6.0, 6.4),
    ],
)
def test_colours_stand_out_as_the_look_promises(colour: str, on_paper: float, on_sheet: float) -> None:
    assert contrast(colour, "paper") == pytest.approx(on_paper, abs=LAST_DIGIT)
    assert contrast(colour, "sheet") == pytest.approx(on_sheet, abs=LAST_DIGIT)


@pytest.mark.parametrize(
    ("colour", "on_tint"), [("fit", 4.8), ("care", 4.8), ("unset", 5.8), ("no", 10.1), ("skip", 5.4)]
)
def test_a_mark_stands_out_on_its_own_tint(colour: str, on_tint: float) -> None:
    assert contrast(colour, f"{colour}-tint") == pytest.approx(on_tint, abs=LAST_DIGIT)


@pytest.mark.parametrize("ground", ["fit-tint", "care-tint", "unset-tint", "no-tint", "skip-tint", "sunk"])
def test_text_and_borders_can_be_read_on_every_ground(ground: str) -> None:
    assert contrast("ink", ground) >= 13.3
    assert contrast("soft", ground) >= 6.1
    assert contrast("line", ground) >= 3.45


@pytest.mark.parametrize("colour", ["fit", "care", "unset", "no", "skip"])
def test_white_can_be_read_on_every_verdict_colour(colour: str) -> None:
    assert contrast("sheet", colour) >= 5.55


@pytest.mark.parametrize(
    "sheet", [sheet for sheet in SHEETS if sheet.name != "tokens.css"], ids=lambda sheet: sheet.stem
)
def test_no_file_but_the_tokens_names_a_colour(sheet: Path) -> None:
    rules = re.sub(r"/\*.*?\*/", "", sheet.read_text(encoding="utf-8"), flags=re.DOTALL)

    assert not COLOUR.search(rules)


def test_every_token_that_is_used_is_declared() -> None:
    styles = "\n".join(sheet.read_text(encoding="utf-8") for sheet in SHEETS)

    assert set(re.findall(r"var\((--[a-z0-9-]+)", styles)) <= set(re.findall(r"\s(--[a-z0-9-]+):", styles))


@pytest.mark.parametrize("sheet", SHEETS, ids=lambda sheet: sheet.stem)
def test_every_style_belongs_to_a_declared_layer(sheet: Path) -> None:
    declared = re.search(r"@layer ([a-z, ]+);", (CSS / "layers.css").read_text(encoding="utf-8"))
    assert declared
    filled = re.findall(r"@layer ([a-z]+) {", sheet.read_text(encoding="utf-8"))

    assert set(filled) <= set(declared[1].split(", "))
    assert filled or sheet.name == "layers.css"


def test_classes_and_styles_know_each_other() -> None:
    site: Site = specimen_site(create_app(Settings()).state.site)
    specimens = [site.render(specimen(kind)) for kind in (SpecimenPage, SheetSpecimenPage)]
    makers = [*(PROJECT / "templates").rglob("*.html"), *(PROJECT / "app" / "drawings").rglob("*.py")]
    templates = [path.read_text(encoding="utf-8") for path in makers]
    styles = re.sub(r'/\*.*?\*/|"[^"]*"', "", "".join(map(Path.read_text, SHEETS)), flags=re.DOTALL)

    shown = {name for names in re.findall(r'class="([^"]+)"', "".join(specimens)) for name in names.split()}
    scripts = [path.read_text(encoding="utf-8") for path in (PROJECT / "static" / "js").rglob("*.js")]
    densities = [f"page--{density}" for density in get_args(Density)]
    written = set(re.findall(r"[a-z][a-z0-9_-]*", " ".join(specimens + templates + scripts + densities)))
    styled = set(re.findall(r"\.([a-z][a-z0-9_-]*)", styles))

    assert shown - styled == NAMES_ONLY
    assert styled - written == set()
