"""Reads the lines of a printed page back, as places in mm from the paper's upper left corner."""

from __future__ import annotations

from typing import NamedTuple, TypeAlias, cast

from pypdf import PageObject
from pypdf.generic import ContentStream

Matrix: TypeAlias = tuple[float, float, float, float, float, float]
MmPath: TypeAlias = list[tuple[float, float]]

MM_PER_POINT = 25.4 / 72
UPRIGHT: Matrix = (1, 0, 0, 1, 0, 0)


class Paths(NamedTuple):
    """The paths of a page, corner by corner; a curve is its end. Dashes come out as filled outlines."""

    drawn: list[MmPath]
    filled: list[MmPath]


def paths_in(page: PageObject) -> Paths:
    """What is drawn as a line, and what is filled."""
    height = float(page.mediabox.height)
    contents = page.get_contents()
    assert contents is not None
    pen = _Pen(height)
    for operands, operator in ContentStream(contents, page.pdf).operations:
        pen.take([float(each) for each in operands if isinstance(each, int | float)], operator)
    return Paths(pen.stroked, pen.filled)


class _Pen:
    """Follows a content stream: the matrix in force, the paths begun, and those that were stroked."""

    def __init__(self, height_points: float) -> None:
        self.height = height_points
        self.matrix, self.kept = UPRIGHT, list[Matrix]()
        self.begun, self.stroked, self.filled = list[MmPath](), list[MmPath](), list[MmPath]()

    def take(self, numbers: list[float], operator: bytes) -> None:
        match operator:
            case b"q":
                self.kept.append(self.matrix)
            case b"Q":
                self.matrix = self.kept.pop()
            case b"cm":
                self.matrix = _after(cast("Matrix", tuple(numbers)), self.matrix)
            case b"m":
                self.begun.append([self._place(numbers)])
            case b"l" | b"c" | b"v" | b"y":
                self.begun[-1].append(self._place(numbers[-2:]))
            case b"S" | b"s" | b"B" | b"b":
                self.stroked += self.begun
                self.begun = []
            case b"f" | b"f*":
                self.filled += self.begun
                self.begun = []
            case b"n":
                self.begun = []
            case _:
                pass

    def _place(self, numbers: list[float]) -> tuple[float, float]:
        (a, b, c, d, e, f), (x, y) = self.matrix, numbers
        return (a * x + c * y + e) * MM_PER_POINT, (self.height - (b * x + d * y + f)) * MM_PER_POINT


def _after(one: Matrix, two: Matrix) -> Matrix:
    """The matrix that does `one` and then `two`."""
    a, b, c, d, e, f = one
    g, h, i, j, k, m = two
    return (a * g + b * i, a * h + b * j, c * g + d * i, c * h + d * j, e * g + f * i + k, e * h + f * j + m)
