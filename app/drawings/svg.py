"""The few elements that our drawings are made of, as escaped text: lines, outlines, hatching, words.

Places are in units of the drawing, x to the right and y downward. A drawing is WIDTH units wide, as a phone
shows it: a unit is a pixel there, and its text is no smaller than a page's.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from itertools import pairwise
from typing import Literal, TypeAlias
from xml.sax.saxutils import escape, quoteattr

Point: TypeAlias = tuple[float, float]
Anchor: TypeAlias = Literal["start", "middle", "end"]

WIDTH = 272.0
# Of the text in drawings, in units: its size, the distance between lines, and no letter is wider on average.
TEXT, LINE, LETTER = 13.5, 16.0, 7.1
TENTHS = 10
XML_STYLES = '<?xml version="1.0" encoding="UTF-8"?>\n<?xml-stylesheet type="text/css" href={href}?>\n'


@dataclass(frozen=True, slots=True)
class View:
    """How millimetres come onto the paper: where the origin stands, and a millimetre along either axis."""

    origin: Point
    along_x: Point
    along_y: Point

    @classmethod
    def upright(cls, scale: float, origin: Point) -> View:
        """So many units to a millimetre, x to the right and y upward."""
        return cls(origin, (scale, 0.0), (0.0, -scale))

    @classmethod
    def from_left(cls, scale: float, origin: Point, falls_deg: float) -> View:
        """A bike that faces left: x along a stay that falls so many degrees towards the cranks, y upward."""
        down, level = math.sin(math.radians(falls_deg)) * scale, math.cos(math.radians(falls_deg)) * scale
        return cls(origin, (-level, down), (-down, -level))

    @property
    def scale(self) -> float:
        """Units to a millimetre."""
        return math.hypot(*self.along_x)

    def at(self, point: Sequence[float]) -> Point:
        """The place on the paper of a point in mm."""
        (x0, y0), (xx, xy), (yx, yy) = self.origin, self.along_x, self.along_y
        return x0 + point[0] * xx + point[1] * yx, y0 + point[0] * xy + point[1] * yy

    def all(self, points: Iterable[Sequence[float]]) -> list[Point]:
        """The places on the paper of several points in mm."""
        return [self.at(point) for point in points]


@dataclass(frozen=True, slots=True)
class Drawing:
    """A drawing that is ready to be put on a page or sent by itself.

    name         names its title and description among those of other drawings on a page
    title        what it shows, for those who don't see it
    description  what it tells them, its numbers included
    scale        units to a millimetre, for those who measure in it; 0 where it isn't of lengths
    remark       what stands under it on a page, or nothing
    """

    name: str
    title: str
    description: str
    height: float
    scale: float
    parts: tuple[str, ...]
    remark: str = ""

    def inline(self) -> str:
        """The drawing as it stands in a page."""
        return self._svg("")

    def document(self, styles: str) -> str:
        """The drawing as a document of its own, with the address of its style sheet."""
        return XML_STYLES.format(href=quoteattr(styles)) + self._svg(' xmlns="http://www.w3.org/2000/svg"')

    def _svg(self, namespace: str) -> str:
        name = escape(self.name)
        body = "".join(self.parts)
        # Without its style sheet it is still a line drawing.
        return (
            f'<svg{namespace} class="drawing" viewBox="0 0 {number(WIDTH)} {number(self.height)}" role="img"'
            f' aria-labelledby="{name}-title {name}-desc" fill="none" stroke="currentColor"'
            f' data-scale="{self.scale:.6g}">'
            f'<title id="{name}-title">{escape(self.title)}</title>'
            f'<desc id="{name}-desc">{escape(self.description)}</desc>{body}</svg>'
        )


def number(value: float) -> str:
    """A coordinate to a hundredth of a unit, as short as it goes."""
    text = f"{value:.2f}".rstrip("0").rstrip(".")
    return "0" if text == "-0" else text


def steps_text(points: Iterable[Point]) -> str:
    """A path through places to a tenth of a unit, each told by the step from the last, which is shorter."""
    tenths = [(round(x * TENTHS), round(y * TENTHS)) for x, y in points]
    start, steps = tenths[0], pairwise(tenths)
    moved = (_pair(x - from_x, y - from_y) for (from_x, from_y), (x, y) in steps)
    return f"M{_pair(*start)}l{' '.join(moved)}"


def _pair(x: int, y: int) -> str:
    return f"{number(x / TENTHS)} {number(y / TENTHS)}"


def line(start: Point, end: Point, kind: str) -> str:
    """A straight line; `kind` is its class."""
    (x1, y1), (x2, y2) = start, end
    return f'<line class="{kind}" x1="{number(x1)}" y1="{number(y1)}" x2="{number(x2)}" y2="{number(y2)}"/>'


def lines(pairs: Iterable[tuple[Point, Point]], kind: str) -> str:
    """Many straight lines of one kind, as one element."""
    steps = "".join(map(steps_text, pairs))
    return f'<path class="{kind}" d="{steps}"/>' if steps else ""


def outline(points: Iterable[Point], kind: str) -> str:
    """A closed outline."""
    return outlines([points], kind)


def outlines(rings: Iterable[Iterable[Point]], kind: str) -> str:
    """Closed outlines as one element, holes included."""
    steps = "".join(f"{steps_text(ring)}z" for ring in rings)
    return f'<path class="{kind}" d="{steps}"/>' if steps else ""


def open_path(points: Iterable[Point], kind: str) -> str:
    """A line with corners."""
    return f'<path class="{kind}" d="{steps_text(points)}"/>'


def box(corner: Point, other: Point, kind: str) -> str:
    """A rectangle between two opposite corners."""
    left, right = sorted((corner[0], other[0]))
    top, bottom = sorted((corner[1], other[1]))
    return (
        f'<rect class="{kind}" x="{number(left)}" y="{number(top)}"'
        f' width="{number(right - left)}" height="{number(bottom - top)}"/>'
    )


def words(at: Point, text: str, anchor: Anchor = "start", kind: str = "") -> str:
    """A line of text; `at` is on its base line."""
    looks = f' class="{kind}"' if kind else ""
    side = "" if anchor == "start" else f' text-anchor="{anchor}"'
    x, y = (number(round(place, 1)) for place in at)
    return f'<text{looks} x="{x}" y="{y}"{side}>{escape(text)}</text>'


def dots(places: Iterable[Point], kind: str) -> str:
    """Round dots as wide as the lines of their class, as one element."""
    steps = "".join(f"{steps_text((place, place))}" for place in places)
    return f'<path class="{kind}" d="{steps}"/>' if steps else ""


def group(kind: str, parts: Iterable[str]) -> str:
    """Elements that belong together."""
    return f'<g class="{kind}">{"".join(parts)}</g>'


def width_of(text: str) -> float:
    """How wide a line of text is at most, near enough to keep it on the paper."""
    return len(text) * LETTER


def kept_on_paper(x: float, text: str, anchor: Anchor = "middle") -> float:
    """The place nearest to x at which the whole text is on the paper."""
    before = {"start": 0.0, "middle": 0.5, "end": 1.0}[anchor] * width_of(text)
    return min(max(x, before + 1), WIDTH - 1 - (width_of(text) - before))
