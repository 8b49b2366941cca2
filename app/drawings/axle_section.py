"""The axle from locknut to locknut, cut lengthwise and seen from behind, to scale, with what stands on it."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

import shapely

from app.drawings.axle_scene import AxleScene, Look, Piece
from app.drawings.callouts import Callout, leaders, row_of
from app.drawings.dimension import across, along
from app.drawings.legend import legend
from app.drawings.shapes import edge_of, hatching_of, on_paper
from app.drawings.svg import LINE, TEXT, WIDTH, Drawing, Point, View, line, width_of, words

NAME = "axle"
TITLE = "The axle from locknut to locknut, from behind"
TO_SCALE = "Drawn to scale and cut along the axle; the left of the bike is on the left."

ROOM, LARGEST_SCALE, HIGHEST = 3.0, 1.7, 230.0
HEAD, RAIL, UNDER_AXIS, UNDER_TOP = TEXT + 12, LINE + 7.0, 0.0, 8.0
# What ends below this radius in mm lies low; the line from its name starts so far from the edge.
LOW, OVER_NAME = 30.0, 12.0
# Each look: the class of its edge, and whether its hatching falls; None where it isn't hatched.
LOOKS: dict[Look, tuple[str, bool | None]] = {
    "frame": ("drawing__edge", False),
    "axle": ("drawing__edge", True),
    "arm": ("drawing__bold", True),
    "shell": ("drawing__shell", None),
    "rotor": ("drawing__solid", None),
    "sure": ("drawing__edge", False),
    "possible": ("drawing__hidden", None),
    "freehub": ("drawing__part", None),
}


def axle_section(scene: AxleScene) -> Drawing:
    """The section with its dimensions under it."""
    view, axis = _lay_out(scene)
    levels = [level for level in scene.levels if level.is_level]
    rails = [axis + UNDER_AXIS + RAIL * (row + 1) for row in range(len(levels))]
    key, bottom = legend(
        axis + UNDER_AXIS + RAIL * len(rails) + LINE + TEXT / 2,
        view.scale,
        has_caliper=any(piece.look == "possible" for piece in scene.pieces),
    )
    parts = [
        *(element for piece in scene.pieces for element in _drawn(piece, view)),
        line((0, axis), (WIDTH, axis), "drawing__centre"),
        *(
            along(view.at(level.start), view.at(level.end), level.text, rail=rail, of=level.rule_id)
            for level, rail in zip(levels, rails, strict=True)
        ),
        *_slanting(scene, view),
        *_names(scene.pieces, view),
        *key,
    ]
    return Drawing(NAME, TITLE, " ".join((TO_SCALE, *scene.notes)), bottom, view.scale, tuple(parts))


def _lay_out(scene: AxleScene) -> tuple[View, float]:
    """As large as the paper lets it, and where the axle's centre line then lies."""
    left, _, right, highest = shapely.union_all([piece.outline for piece in scene.pieces]).bounds
    scale = min((WIDTH - 2 * ROOM) / (right - left), LARGEST_SCALE, HIGHEST / highest)
    axis = HEAD + highest * scale
    start = (WIDTH - (right - left) * scale) / 2
    return View.upright(scale, (start - left * scale, axis)), axis


def _drawn(piece: Piece, view: View) -> Iterator[str]:
    kind, falling = LOOKS[piece.look]
    shape = on_paper(piece.outline, view)
    if falling is not None:
        yield edge_of(shape, "drawing__ground")
        yield hatching_of(shape, "drawing__hatch", falling=falling)
    yield edge_of(shape, kind)


def _slanting(scene: AxleScene, view: View) -> Iterator[str]:
    """What is measured otherwise than along the axle, in the picture itself."""
    edges = shapely.union_all([shapely.boundary(on_paper(piece.outline, view)) for piece in scene.pieces])
    for level in scene.levels:
        if not level.is_level:
            start, end = view.at(level.start), view.at(level.end)
            yield across(
                start,
                end,
                level.text,
                lines_near=edges,
                frame=shapely.box(0, HEAD, WIDTH, view.origin[1]),
                of=level.rule_id,
            )


def _names(pieces: Sequence[Piece], view: View) -> Iterator[str]:
    """Each name once: in its largest piece where that has room, beside what lies low, else in a row above."""
    named: dict[str, Piece] = {}
    for piece in pieces:
        known = named.get(piece.name)
        if piece.name and (known is None or piece.outline.area > known.outline.area):
            named[piece.name] = piece
    above = []
    for name, piece in named.items():
        left, low, right, top = piece.outline.bounds
        middle = (left + right) / 2
        if piece.look == "shell" and (right - left) * view.scale > width_of(name) + TEXT:
            yield words(view.at((middle, (low + top) / 2)), name, "middle")
        elif top < LOW and piece.look in {"frame", "arm"}:
            yield from _beside(name, view.at((middle, (low + top) / 2)), view)
        else:
            above.append(Callout(name, view.at(_high_in(piece, UNDER_TOP / view.scale))))
    yield from row_of(above, TEXT, above=True)


def _beside(name: str, target: Point, view: View) -> Iterator[str]:
    """A name at the edge of the paper that is nearer, over the ends of the axle."""
    _, base = view.at((0, LOW + ROOM))
    is_left = target[0] < WIDTH / 2
    foot = (OVER_NAME, base + ROOM) if is_left else (WIDTH - OVER_NAME, base + ROOM)
    yield leaders([(foot, target)])
    yield words((1 if is_left else WIDTH - 1, base), name, "start" if is_left else "end")


def _high_in(piece: Piece, under_top: float) -> Point:
    """A place high up in a piece, so that the line to it crosses as little as can be."""
    left, low, right, top = piece.outline.bounds
    level = max(top - under_top, (low + top) / 2)
    across = shapely.intersection(piece.outline, shapely.LineString([(left, level), (right, level)]))
    return across.centroid.x, level
