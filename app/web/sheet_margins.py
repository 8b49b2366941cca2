"""The lines that a printed sheet repeats in the margins of every page, as a small style sheet of its own.

The policy allows no style inside a page, and only a style sheet can write into the margins of paper.
"""

from __future__ import annotations

from starlette.responses import Response

# The first page says it in the flow, where every browser prints it.
TEMPLATE = """\
@media print {{
  @page {{
    @top-center {{ content: {head}; }}
    @bottom-left {{ content: {foot}; font-size: {size_pt}pt; }}
    @bottom-right {{ font-size: {size_pt}pt; }}
  }}
  @page :first {{ @top-center {{ content: none; }} }}
}}
"""


def sheet_margins(*, head: str, foot: str, size_pt: int = 8) -> Response:
    """The style sheet; link it from the sheet's `head` block.

    head    over every page, such as "SUPERSEDED BY REVISION C", or empty
    foot    under every page beside the page number, such as "7Q4K-2M9Y · revision B"
    size_pt   of the foot and of the page number, in points
    """
    return Response(
        TEMPLATE.format(head=_css_string(head), foot=_css_string(foot), size_pt=size_pt),
        media_type="text/css",
    )


def _css_string(text: str) -> str:
    """The text as a CSS string, every character that isn't plain written by its number."""
    plain = (
        each if each.isascii() and (each.isalnum() or each in " -,.") else f"\\{ord(each):x} "
        for each in text
    )
    return '"' + "".join(plain) + '"'
