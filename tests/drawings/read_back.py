"""Reads a drawing back from its text, as somebody with a rule would: lines, words and what they measure."""

from __future__ import annotations

import math
import re
from dataclasses import dataclass
from xml.etree import ElementTree as ET

from app.drawings.svg import Drawing, width_of

SVG = "{http://www.w3.org/2000/svg}"
STYLES = "/static/app.css"
NUMBER = re.compile(r"[−-]?\d+(?:\.\d+)?")


@dataclass(frozen=True)
class ReadBack:
    """The parsed text of a drawing."""

    root: ET.Element

    @property
    def scale(self) -> float:
        """Units to a millimetre."""
        return float(self.root.attrib["data-scale"])

    @property
    def size(self) -> tuple[float, float]:
        """Width and height in units."""
        _, _, width, height = map(float, self.root.attrib["viewBox"].split())
        return width, height

    def of_class(self, kind: str) -> list[ET.Element]:
        """Every element of a class."""
        return [each for each in self.root.iter() if kind in each.attrib.get("class", "").split()]

    def classes(self) -> set[str]:
        """Every class that is used."""
        return {name for each in self.root.iter() for name in each.attrib.get("class", "").split()}

    def text(self, tag: str) -> str:
        """The words of the title or of the description."""
        return self.root.findtext(f"{SVG}{tag}") or ""

    def words(self) -> list[ET.Element]:
        """Every line of text."""
        return list(self.root.iter(f"{SVG}text"))


def read_back(drawing: Drawing) -> ReadBack:
    """A drawing as its own document says it."""
    return ReadBack(ET.fromstring(drawing.document(STYLES)))  # noqa: S314 - the text is our own


def ends(line: ET.Element) -> tuple[tuple[float, float], tuple[float, float]]:
    """Both ends of a straight line."""
    x1, y1, x2, y2 = (float(line.attrib[name]) for name in ("x1", "y1", "x2", "y2"))
    return (x1, y1), (x2, y2)


def length(line: ET.Element) -> float:
    """How long a straight line is, in units."""
    return math.dist(*ends(line))


def numbers_in(text: str) -> list[float]:
    """The numbers that a text names."""
    return [float(each.replace("−", "-")) for each in NUMBER.findall(text)]


def place_of(word: ET.Element) -> tuple[float, float, float]:
    """From where to where a line of text may reach, and its base line."""
    wide = width_of(word.text or "")
    left = (
        float(word.attrib["x"])
        - {"middle": 0.5, "end": 1.0}.get(word.attrib.get("text-anchor", ""), 0.0) * wide
    )
    return left, left + wide, float(word.attrib["y"])


def places_of(path: ET.Element) -> list[tuple[float, float]]:
    """The corners of an outline."""
    places: list[tuple[float, float]] = []
    for ring in path.attrib["d"].replace("z", "").split("M")[1:]:
        numbers = [float(each) for each in ring.replace("l", " ").split()]
        x = y = 0.0
        for dx, dy in zip(numbers[::2], numbers[1::2], strict=True):
            x, y = x + dx, y + dy
            places.append((x, y))
    return places
