"""How far a wheel rolls, against published charts and roll-outs; each source stands beside its number."""

from __future__ import annotations

import pytest

from app.facts.span import Span
from app.mechanics.wheel_size import geometric_circumference_mm, rolled_circumference_mm
from tests.demo import demo_standards

CALIBRATION = "sheldonbrown.com/cyclecomputer-calibration.html, worked in cyclingforums.com/threads/…283428"
CHARTS = "bikeforums.net, topic 573821 (two charts)"

# Charts round to whole millimetres and differ among themselves by more than this.
AS_WORKED = 1
AS_CHARTED = 10


@pytest.mark.parametrize(
    ("tyre_mm", "bead_seat_mm", "published_mm", "within_mm", "source"),
    [
        (28, 622, 2130, AS_WORKED, CALIBRATION),
        (23, 622, 2098, AS_WORKED, CALIBRATION),
        (32, 622, 2155, AS_WORKED, CHARTS),
        (28, 622, 2136, AS_CHARTED, CHARTS),
        (25, 630, 2145, AS_CHARTED, CHARTS),
        (25, 622, 2105, AS_CHARTED, "bikeforums.net, topic 363408"),
    ],
)
def test_the_geometry_of_a_narrow_tyre_gives_what_is_published(
    tyre_mm: int, bead_seat_mm: int, published_mm: int, within_mm: int, source: str
) -> None:
    low, high = geometric_circumference_mm(Span.exactly(bead_seat_mm), Span.exactly(tyre_mm)).ends

    assert published_mm - within_mm <= low <= high <= published_mm + within_mm, source


@pytest.mark.parametrize(
    ("tyre_mm", "bead_seat_mm", "ridden_mm", "source"),
    [
        (57, 622, 2220, "forum.bikehub.co.za, topic 139869: matched a map over 32 km"),
        (57, 622, 2246, "the same: rolled under load"),
        (23, 622, 2096, "cyclechat.net/threads/tyre-circumference.160602: rolled with a rider"),
        (32, 630, 2161, CHARTS),
    ],
)
def test_a_roll_out_lies_within_what_is_reckoned_for_a_ridden_wheel(
    tyre_mm: int, bead_seat_mm: int, ridden_mm: int, source: str
) -> None:
    rolled = rolled_circumference_mm(
        Span.exactly(bead_seat_mm), Span.exactly(tyre_mm), demo_standards().roll_outs
    )

    assert rolled.meets(Span.exactly(ridden_mm)), source
