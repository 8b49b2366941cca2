"""The caliper's inner half beside spokes and spoke heads of the left flange."""

from __future__ import annotations

from app.facts.span import Span
from app.mechanics.spokes_beside_caliper import Spokes, to_heads, to_spokes

SPOKES = Spokes.of(
    heads="both", pcd_mm=Span.exactly(190), flange_mm=Span.exactly(4), thickness_mm=Span.exactly(3)
)


def spokes_gap(room_mm: str, rotor_mm: int, beyond_mm: int) -> Span:
    return to_spokes(
        spokes=SPOKES,
        spoke_mm=Span.exactly(2),
        room_mm=Span.exactly(room_mm),
        rotor_diameter_mm=Span.exactly(rotor_mm),
        beyond_rotor_mm=Span.exactly(beyond_mm),
    )


def heads_gap(room_mm: str, nearest_mm: int) -> Span:
    return to_heads(
        spokes=SPOKES,
        head_height_mm=Span.exactly(2),
        head_radius_mm=Span.exactly(2),
        room_mm=Span.exactly(room_mm),
        nearest_mm=Span.exactly(nearest_mm),
    )


def test_the_flange_s_outer_face_lies_half_its_thickness_outboard_of_its_middle() -> None:
    assert (SPOKES.radius_mm, SPOKES.face_mm) == (Span.exactly(95), Span.exactly("2.5"))


def test_spokes_outside_stand_out_of_the_flange_by_their_thickness() -> None:
    assert spokes_gap("3", rotor_mm=180, beyond_mm=20) == Span.exactly("3.5")


def test_spokes_begin_at_the_flange_so_that_a_short_caliper_ends_before_them() -> None:
    assert spokes_gap("-9", rotor_mm=140, beyond_mm=20) == Span.exactly(5)


def test_heads_stand_out_at_the_flange_alone() -> None:
    assert heads_gap("-9", nearest_mm=101) == Span.exactly(4)
    assert heads_gap("-1", nearest_mm=60) == Span.exactly("-0.5")
