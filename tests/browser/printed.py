"""What comes out of the printer: the text of every page, and what of a sheet should be on them."""

from __future__ import annotations

import re
import unicodedata
from io import BytesIO

from playwright.sync_api import Page
from pypdf import PdfReader

# A row has to be whole on one page: a finding is a row of several texts, with punctuation set between them.
ROWS = """() => [...document.querySelectorAll(
    ".sheet h1, .sheet h2, .sheet__warning, .sheet__cells > div, .sheet__address, .sheet__line, .finding,"
    + ".tick-list > li, .sheet__cautions > li, .sheet__facts > div, .write-lines > span, .signatures > div")]
  .map((row) => (row.matches(".finding") ? [...row.querySelectorAll("p, span")] : [row]))
  .map((texts) => texts.filter((text) => text.checkVisibility()).map((text) => text.innerText))"""
TITLES = """() => [...document.querySelectorAll(".sheet__titles")]
  .flatMap((each) => each.innerText.split(/ · |: /))"""


def printed(page: Page, paper: str) -> list[str]:
    """The text of each page as it comes out on A4 or on Letter, without backgrounds."""
    reader = PdfReader(BytesIO(page.pdf(format=paper)))
    return [sheet.extract_text() for sheet in reader.pages]


def runs_through(pages: list[str], text: str) -> bool:
    """Whether a text is there, on one page or begun on one and ended on another."""
    wanted = letters(text)
    return any(
        any(wanted[:cut] in page for page in pages) and any(wanted[cut:] in page for page in pages)
        for cut in range(len(wanted))
    )


def rows_of(page: Page) -> list[list[str]]:
    """Every row of the sheet that is open, as it is printed, each as its texts."""
    page.emulate_media(media="print")
    rows: list[list[str]] = page.evaluate(ROWS)
    return rows


def holds(printed_page: str, row: list[str]) -> bool:
    """Whether a page has every text of a row."""
    return all(letters(text) in printed_page for text in row)


def titles_of(page: Page) -> list[str]:
    """The titles of the checks that passed."""
    titles: list[str] = page.evaluate(TITLES)
    return titles


def letters(text: str) -> str:
    """The text without its spaces, ligatures taken apart: how a printer spaces letters is its own affair."""
    return re.sub(r"\s", "", unicodedata.normalize("NFKC", text))
