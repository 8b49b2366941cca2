"""What is seen of an axle cut lengthwise, from behind, in mm, ready to be drawn.

Places are how far inboard of the left dropout's inner face, and how far from the axle's centre line.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal, TypeAlias

import shapely
from shapely import Polygon

Look: TypeAlias = Literal["frame", "axle", "arm", "shell", "rotor", "sure", "possible", "freehub"]


@dataclass(frozen=True, slots=True)
class Piece:
    """One thing on the axle or beside it: its outline above the centre line, and how it is drawn.

    name   what it is called on the drawing; empty for a piece that needs no name
    look   frame and axle are cut and hatched; of a caliper is sure where it is, possible where it may be
    """

    name: str
    look: Look
    outline: Polygon


@dataclass(frozen=True, slots=True)
class Level:
    """A length: both its ends along the axle with their radii, and its number as a finding says it.

    is_level   whether it is measured along the axle, whatever the radii of its ends
    """

    rule_id: str
    start: tuple[float, float]
    end: tuple[float, float]
    text: str
    is_level: bool = True


@dataclass(frozen=True, slots=True)
class AxleScene:
    """Everything that the section shows, from the back to the front.

    notes   sentences for those who don't see the drawing, each with its numbers
    """

    pieces: tuple[Piece, ...]
    levels: tuple[Level, ...] = ()
    notes: tuple[str, ...] = ()


def block(start: float, end: float, inner: float, outer: float) -> Polygon:
    """A ring around the axle: between two places along it in either order, and between two radii."""
    return shapely.box(min(start, end), inner, max(start, end), outer)
