"""A sheet of paper at its own size: what a printer puts down on A4 as on Letter, with bars to check it by.

Places are in mm on the sheet, x to the right and y downward, and turn into tenths of a millimetre, which are
the units that a sheet is drawn in.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from textwrap import wrap
from xml.sax.saxutils import escape, quoteattr

from shapely import MultiPolygon, Polygon

from app.drawings.svg import XML_STYLES, Point, View, group, lines, outlines, words

UNITS_PER_MM = 10
# What both kinds of paper have inside margins of 10 mm, and 12 mm below.
PAPER_MM = (190.0, 255.0)
TEXT_MM, TITLE_MM, LINE_MM, LETTER_MM = 3.2, 4.6, 4.3, 1.72
BAR_MM, INCH_MM, INCHES = 100.0, 25.4, 4
TICK_MM = 2.0
ORIGIN = View((0, 0), (UNITS_PER_MM, 0), (0, UNITS_PER_MM))


@dataclass(frozen=True, slots=True)
class GaugeSheet:
    """One sheet of a gauge, ready to be put on a page or sent by itself; one unit is a tenth of a millimetre.

    name  names its title and description among those of other sheets on a page
    """

    name: str
    title: str
    description: str
    parts: tuple[str, ...]

    def inline(self) -> str:
        """The sheet as it stands in a page."""
        return self._svg("")

    def document(self, styles: str) -> str:
        """The sheet as a document of its own, with the address of its style sheet."""
        return XML_STYLES.format(href=quoteattr(styles)) + self._svg(' xmlns="http://www.w3.org/2000/svg"')

    def _svg(self, namespace: str) -> str:
        name, (width, height) = escape(self.name), PAPER_MM
        # The look stands here too, so that a sheet that was saved prints the same without its style sheet.
        return (
            f'<svg{namespace} class="gauge" width="{width:g}mm" height="{height:g}mm"'
            f' viewBox="0 0 {width * UNITS_PER_MM:g} {height * UNITS_PER_MM:g}" role="img"'
            f' aria-labelledby="{name}-title {name}-desc" fill="none" stroke="currentColor"'
            f' stroke-width="2" font-family="Verdana, DejaVu Sans, sans-serif"'
            f' font-size="{TEXT_MM * UNITS_PER_MM:g}">'
            f'<title id="{name}-title">{escape(self.title)}</title>'
            f'<desc id="{name}-desc">{escape(self.description)}</desc>{"".join(self.parts)}</svg>'
        )


def rings(shape: Polygon | MultiPolygon, view: View) -> list[list[Point]]:
    """Every ring of a shape on the paper, holes included, each without its first corner repeated."""
    polygons = shape.geoms if isinstance(shape, MultiPolygon) else [shape]
    found = [ring for polygon in polygons for ring in (polygon.exterior, *polygon.interiors)]
    return [view.all(list(ring.coords)[:-1]) for ring in found]


def cut_last(shape: Polygon | MultiPolygon, view: View) -> str:
    """The part's own edge: cut along it after the dashed line."""
    return f'<g stroke-width="3">{outlines(rings(shape, view), "gauge__cut")}</g>'


def cut_first(shape: Polygon | MultiPolygon, view: View) -> str:
    """The edge that has to stay clear: dashed, and cut along first."""
    return f'<g stroke-dasharray="24 12">{outlines(rings(shape, view), "gauge__cut-first")}</g>'


def fine(pairs: Iterable[tuple[Point, Point]], view: View) -> str:
    """Fine lines between places in mm."""
    return lines([(view.at(start), view.at(end)) for start, end in pairs], "gauge__fine")


def centre_lines(pairs: Iterable[tuple[Point, Point]], view: View) -> str:
    """Lines along which something is laid, dashed and dotted."""
    return f'<g stroke-dasharray="60 10 10 10">{fine(pairs, view)}</g>'


def text_block(at_mm: Point, sentences: Sequence[str], width_mm: float) -> str:
    """Sentences set below each other, each from a line of its own."""
    x, y = at_mm
    rows = [row for sentence in sentences for row in wrap(sentence, int(width_mm / LETTER_MM))]
    return printed(words(ORIGIN.at((x, y + number * LINE_MM)), row) for number, row in enumerate(rows))


def numbered(sentences: Iterable[str]) -> tuple[str, ...]:
    """What is done one after the other."""
    return tuple(f"{number}. {sentence}" for number, sentence in enumerate(sentences, start=1))


def title_line(at_mm: Point, text: str) -> str:
    """A line in larger letters."""
    size = TITLE_MM * UNITS_PER_MM
    return f'<g font-size="{size:g}" font-weight="bold">{printed([words(ORIGIN.at(at_mm), text)])}</g>'


def label(at_mm: Point, text: str, *, to_the_left: bool = False) -> str:
    """A word or two beside a line."""
    return printed([words(ORIGIN.at(at_mm), text, "end" if to_the_left else "start")])


def printed(parts: Iterable[str]) -> str:
    """Texts as letters rather than as their outlines."""
    return f'<g fill="currentColor" stroke="none">{group("gauge__text", parts)}</g>'


def bars(at_mm: Point) -> str:
    """The bars by which a print is checked: 100 mm in tens, and 4 in by the inch below it."""
    x, y = at_mm
    tens = [10.0 * place for place in range(int(BAR_MM) // 10 + 1)]
    inches = [INCH_MM * place for place in range(INCHES + 1)]
    return "".join(
        (
            group("gauge__bar", [_bar((x, y), tens)]),
            label((x + inches[-1] + 3, y + 1), "100 mm"),
            group("gauge__bar", [_bar((x, y + 8), inches)]),
            label((x + inches[-1] + 3, y + 9), "4 in"),
        )
    )


def _bar(at_mm: Point, places: Sequence[float]) -> str:
    x, y = at_mm
    ticks = [((x + place, y - TICK_MM), (x + place, y + TICK_MM)) for place in places]
    return fine([((x, y), (x + places[-1], y)), *ticks], ORIGIN)
