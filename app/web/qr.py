"""The address of a build as a QR code, so that a phone at the stand opens it from paper."""

from __future__ import annotations

from functools import lru_cache

import segno
from markupsafe import Markup

QUIET_ZONE = 4  # modules of white around the code, as its standard asks
NAME = "QR code of the address"


@lru_cache(maxsize=64)
def qr_code(address: str) -> Markup:
    """The code as SVG without a size of its own; level M reads with 15 % of it smudged."""
    drawn = segno.make_qr(address, error="m")
    svg = drawn.svg_inline(border=QUIET_ZONE, omitsize=True, svgclass="sheet__qr", lineclass=None, title=NAME)
    return Markup(svg.replace("<svg", '<svg role="img"', 1))  # noqa: S704 - the address is in it as squares alone
