"""What making the result page from a ready report costs, over an empty page of the same size.

Run by hand: `python -m tests.bench.page`. It prints times and ratios of one run; nothing passes or fails.
"""

from __future__ import annotations

import sys
import tempfile
from dataclasses import dataclass, replace
from pathlib import Path
from typing import ClassVar

from markupsafe import Markup

from app.web.page import Page
from app.web.result import result_page
from app.web.settings import PROJECT
from app.web.site import make_templates
from tests.bench.check import milliseconds
from tests.report.bikes import BIKES, checker
from tests.web.shown_builds import first_revision, result_of, site

RUNS = 300
EMPTY = '{% extends "frame.html" %}{% block content %}{{ filling }}{% endblock %}'


@dataclass(frozen=True)
class EmptyPage(Page):
    """A page of the same size that holds one ready text."""

    template: ClassVar[str] = "empty.html"

    filling: Markup

    heading = "Empty"


def main() -> int:
    """Print the figures of every demo bike."""
    shop = replace(site(), checker=checker())
    with tempfile.TemporaryDirectory() as folder:
        (Path(folder) / EmptyPage.template).write_text(EMPTY, encoding="utf-8")
        plain = replace(site(), templates=make_templates(PROJECT / "templates", Path(folder)))
    for name in BIKES:
        shown = first_revision(name)
        filling = EmptyPage(Markup("x" * len(result_of(name))))  # noqa: S704 - one letter, many times
        empty = milliseconds(lambda page=filling: plain.render(page), RUNS)  # type: ignore[misc]
        whole = milliseconds(lambda seen=shown: shop.render(result_page(shop, seen)), RUNS)  # type: ignore[misc]
        print(f"{name:34} {whole:6.2f} ms, empty {empty:5.2f} ms, ratio {whole / empty:4.1f}")
    return 0


if __name__ == "__main__":
    sys.exit(main())
