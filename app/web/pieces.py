"""Pieces of pages that come back at every visit of a build, and at many builds: made once, then kept."""

from __future__ import annotations

from collections.abc import Hashable
from functools import lru_cache
from typing import Any

from jinja2 import Environment
from markupsafe import Markup

MOST_KEPT = 512


@lru_cache(maxsize=MOST_KEPT)
def piece(templates: Environment, component: str, value: Hashable) -> Markup:
    """The HTML that a component of this name, in the file of the same name, makes of a frozen value."""
    module: Any = templates.get_template(f"components/{component}.html").module
    html: Markup = getattr(module, component)(value)
    return html
