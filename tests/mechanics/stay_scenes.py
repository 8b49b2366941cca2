"""Arms and stays for the tests of places: exact ones, and any within what a trade builds."""

from __future__ import annotations

from collections.abc import Mapping

from hypothesis import strategies as st

from app.facts.span import Exact, Span
from app.mechanics.arm_place import Stay
from app.mechanics.clamp import Clamp

X = Span.exactly
PLAIN_STAY = Stay(
    offset_mm=X(0),
    lateral_mm=X(8),
    clear_from_mm=X(40),
    clear_to_mm=X(300),
    width_mm=X(18),
    height_mm=X(26),
    read_at_mm=X(100),
    inward_per_mm=X("0.06"),
    taper_per_mm=X("0.02"),
)
TURNING = Clamp(
    reach_from_mm=X(90),
    reach_to_mm=X(150),
    half_length_mm=X(10),
    places_mm=(),
    steps_deg=(),
    bearing_deg=(X(-8), X(8)),
    offset_mm=None,
    lateral_mm=(X(-3), X(17)),
    width_mm=(X(14), X(24)),
    height_mm=(X(14), X(40)),
)
STRAIGHT = TURNING._replace(steps_deg=(X(0),), bearing_deg=None, offset_mm=(X(-8), X(18)))
STEPPED = STRAIGHT._replace(steps_deg=(X(-6), X(0), X(6), X(12)))
HOLED = TURNING._replace(places_mm=(X(102), X(115), X(128)))
CLAMPS = (TURNING, STRAIGHT, STEPPED, HOLED)


def stay(**readings: Exact | tuple[Exact, Exact]) -> Stay:
    """The plain stay with other readings: one number, or from and to."""
    spans: Mapping[str, Span] = {
        name: Span.between(*value) if isinstance(value, tuple) else X(value)
        for name, value in readings.items()
    }
    return PLAIN_STAY._replace(**spans)


def spans(low: int, high: int) -> st.SearchStrategy[Span]:
    """Any span between two ends, in thousandths."""
    ends = st.tuples(st.integers(low, high), st.integers(low, high))
    return ends.map(lambda pair: Span(min(pair), max(pair)))


@st.composite
def narrower(draw: st.DrawFn, span: Span) -> Span:
    """A closer reading of the same thing."""
    low = draw(st.integers(span.low, span.high))
    return Span(low, draw(st.integers(low, span.high)))


STAYS = st.builds(
    Stay,
    offset_mm=spans(-30_000, 60_000),
    lateral_mm=spans(-20_000, 40_000),
    clear_from_mm=spans(0, 200_000),
    clear_to_mm=spans(50_000, 400_000),
    width_mm=spans(8_000, 40_000),
    height_mm=spans(8_000, 60_000),
    read_at_mm=spans(80_000, 120_000),
    inward_per_mm=spans(0, 150),
    taper_per_mm=spans(0, 60),
)


@st.composite
def read_closer(draw: st.DrawFn, wide: Stay) -> Stay:
    """The same stay, every reading of it closer."""
    return Stay(*(draw(narrower(span)) for span in wide))


@st.composite
def exact_stays(draw: st.DrawFn, wide: Stay) -> Stay:
    """One of the stays that a reading allows."""
    values = [draw(st.integers(span.low, span.high)) for span in wide]
    return Stay(*(Span(value, value) for value in values))
