"""Draws outlines, prisms and readings of calipers, and closer readings of the same calipers."""

from __future__ import annotations

import math

from hypothesis import strategies as st
from shapely import Polygon, difference, transform

from app.facts.span import Span
from app.mechanics.caliper_envelope import Readings
from app.mechanics.caliper_solids import Tables
from app.mechanics.mounts import IsHoles, PostPath
from app.mechanics.plane import Axial, Body, Shape, turned

TABLES = Tables(
    IsHoles(Span.around("39.9", "0.1"), Span.around("79.1", "0.1"), Span.around(51, "0.1")),
    PostPath(Span.exactly(60), Span.exactly("51.811"), Span.exactly("22.061"), Span.exactly("74.2")),
)
# Rounding of coordinates, far below a thousandth of a square millimetre.
NO_AREA = 1e-6

REACHES = {
    "rotor_mm": (100, 260),
    "line_deg": (-90, 180),
    "rotor_offset_mm": (0, 40),
    "outboard_depth_mm": (1, 80),
    "nearest_mm": (5, 200),
    "bearing_deg": (-45, 180),
    "far_mm": (5, 260),
    "far_bearing_deg": (-45, 180),
}
PLAIN = {
    "rotor_mm": Span.around(160, "0.5"),
    "line_deg": Span.around(30, 1),
    "rotor_offset_mm": Span.around("14.4", "0.5"),
    "outboard_depth_mm": Span.around(19, "0.5"),
    "nearest_mm": Span.around("47.5", 1),
    "bearing_deg": Span.around(113, 1),
    "far_mm": Span.around(99, 1),
    "far_bearing_deg": Span.around(65, 1),
}


def readings(mount: str = "post", adapter: str = "none", **known: Span | None) -> Readings:
    """A caliper about which nothing is known but what is named here."""
    unknown = {name: Span.between(*ends) for name, ends in REACHES.items()}
    return Readings(mount, adapter, **{**unknown, **known})  # type: ignore[arg-type]


def measured(mount: str, **better: Span) -> Readings:
    """A caliper of which everything was measured."""
    return readings(mount, "none", **{**PLAIN, **better})


def lies_in(inner: Shape, outer: Shape) -> bool:
    """Whether one shape lies in another, but for the rounding of coordinates."""
    return bool(difference(inner, outer).area < NO_AREA)


@st.composite
def outlines(draw: st.DrawFn) -> Polygon:
    """Star-shaped outlines somewhere within 150 mm of the axle."""
    corners = draw(st.integers(3, 9))
    radii = [draw(st.floats(4, 40)) for _ in range(corners)]
    x, y = draw(st.floats(-100, 100)), draw(st.floats(-100, 100))
    angles = [2 * math.pi * corner / corners for corner in range(corners)]
    return Polygon([(x + r * math.cos(a), y + r * math.sin(a)) for r, a in zip(radii, angles, strict=True)])


@st.composite
def ranges_along(draw: st.DrawFn) -> Axial:
    """From where to where a prism reaches along the axle."""
    start = draw(st.floats(-30, 30))
    return start, start + draw(st.floats(0.5, 20))


@st.composite
def prisms(draw: st.DrawFn) -> Body:
    """Bodies of which everything is known."""
    outline, along = draw(outlines()), draw(ranges_along())
    return Body("prism", outline, outline, along, along)


@st.composite
def calipers(draw: st.DrawFn) -> Readings:
    """Readings of a caliper: exact, rough, or not taken at all."""
    mount = draw(st.sampled_from(["is", "post", "flat"]))
    adapter = draw(st.sampled_from(["none", "plus_20", "plus_40", "other"]))
    known = {name: draw(_reading(name)) for name in REACHES if draw(st.integers(0, 3))}
    return readings(mount, adapter, **known)


@st.composite
def _reading(draw: st.DrawFn, name: str) -> Span:
    low, high = (end * 1000 for end in REACHES[name])
    usual = PLAIN[name]
    near_the_usual = st.integers(usual.low - 15_000, usual.high + 15_000).map(
        lambda value: min(max(value, low), high)
    )
    ends = sorted(draw(st.one_of(near_the_usual, st.integers(low, high))) for _ in range(2))
    return Span(*draw(st.sampled_from([(ends[0], ends[1]), (ends[0], ends[0])])))


@st.composite
def closer(draw: st.DrawFn, wide: Readings) -> Readings:
    """The same caliper, read more closely."""
    narrowed = {}
    for name in REACHES:
        span = getattr(wide, name)
        ends = sorted(draw(st.integers(span.low, span.high)) for _ in range(2))
        kept = draw(st.sampled_from([(span.low, span.high), (ends[0], ends[1])]))
        narrowed[name] = Span(*kept)
    return wide._replace(**narrowed)  # type: ignore[arg-type]


def turned_body(body: Body, degrees: float) -> Body:
    """The same prism, turned about the axle."""
    return Body(
        body.name,
        turned(body.outer, degrees),
        turned(body.inner, degrees),
        body.axial_outer,
        body.axial_inner,
    )


def mirrored_body(body: Body) -> Body:
    """The same prism on the other side of the stay's line."""
    outer, inner = (transform(shape, lambda points: points * (1, -1)) for shape in (body.outer, body.inner))
    return Body(body.name, outer, inner, body.axial_outer, body.axial_inner)
