"""The smallest cog beside the dropout, the largest beside the motor, each with its chain."""

from __future__ import annotations

import pytest

from app.facts.span import Span
from app.mechanics.cogs_beside import chain_beside_cog_mm, cog_radius_mm, cog_to_cover, cog_to_dropout
from tests.demo import demo_standards

PITCHES = demo_standards().cog_pitches


def test_a_socket_brings_the_dropout_nearer_to_the_smallest_cog() -> None:
    open_mm, closed_mm = (
        cog_to_dropout(
            right_mm=Span.exactly(48),
            smallest_cog_face_mm=Span.exactly(41),
            socket_depth_mm=Span.exactly(depth),
        )
        for depth in ("0", "3.5")
    )

    assert (open_mm, closed_mm) == (Span.exactly(7), Span.exactly("3.5"))


@pytest.mark.parametrize(("teeth", "radius_mm"), [(6, 12.7), (12, 24.5345), (36, 72.858), (51, 103.149)])
def test_a_cog_is_as_large_as_its_teeth_make_it(teeth: int, radius_mm: float) -> None:
    """Six links of half an inch make a hexagon, whose corners are as far out as they are apart."""
    radius = cog_radius_mm(Span.exactly(teeth))

    assert radius.ends[0] == pytest.approx(radius_mm, abs=0.001)
    assert radius.width <= 1


def test_a_chain_for_few_cogs_stands_out_further_than_one_for_many() -> None:
    assert chain_beside_cog_mm(Span.exactly(8), PITCHES) == Span.between("2.65", "2.75")
    assert chain_beside_cog_mm(Span.exactly(12), PITCHES) == Span.between("1.825", "1.85")


def test_a_count_without_a_chain_of_its_own_takes_the_nearest() -> None:
    assert chain_beside_cog_mm(Span.exactly(6), PITCHES) == chain_beside_cog_mm(Span.exactly(8), PITCHES)


def test_a_count_that_is_not_certain_takes_every_chain() -> None:
    assert chain_beside_cog_mm(Span.between(8, 12), PITCHES) == Span.between("1.825", "2.75")


@pytest.mark.parametrize(
    ("radius_mm", "cog_face_mm", "gap_mm"),
    [
        pytest.param(80, 4, 10, id="within the rim"),
        pytest.param(95, 7, 2, id="beside the rim"),
        pytest.param(95, 4, -1, id="on the rim"),
    ],
)
def test_the_rim_of_the_cover_stops_a_cog_only_in_both_views(
    radius_mm: int, cog_face_mm: int, gap_mm: int
) -> None:
    gap = cog_to_cover(
        cover_radius_mm=Span.exactly(90),
        cover_face_mm=Span.exactly(5),
        radius_mm=Span.exactly(radius_mm),
        largest_cog_face_mm=Span.exactly(cog_face_mm),
    )

    assert gap == Span.exactly(gap_mm)
