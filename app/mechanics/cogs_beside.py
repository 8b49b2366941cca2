"""The cogs at either end of the cassette: the smallest beside the dropout, the largest beside the motor."""

from __future__ import annotations

import math
from collections.abc import Sequence
from fractions import Fraction

from app.catalogue.drivetrain_standards import CogPitch
from app.facts.span import Span
from app.mechanics.cassette import nearest_row
from app.mechanics.corner_gap import corner_gap
from app.mechanics.counts import whole_numbers

CHAIN_PITCH_MM = 12.7
HALF = Fraction(1, 2)


def cog_to_dropout(*, right_mm: Span, smallest_cog_face_mm: Span, socket_depth_mm: Span) -> Span:
    """From the smallest cog's outer face to the drive-side dropout's innermost face, in mm.

    right_mm              from the shell's right face to the floor of the dropout
    smallest_cog_face_mm  from the shell's right face to the cog's outer face
    """
    return right_mm - smallest_cog_face_mm - socket_depth_mm


def cog_radius_mm(teeth: Span) -> Span:
    """From the axle to the rollers of a chain on a cog: its teeth are corners half an inch apart."""
    low, high = (CHAIN_PITCH_MM / 2 / math.sin(math.pi / count) for count in teeth.ends)
    return Span.outward(low, high)


def chain_beside_cog_mm(cogs: Span, rows: Sequence[CogPitch]) -> Span:
    """How far a chain stands out beyond one face of its cog, in mm, by the number of cogs.

    A row without a chain's width is passed over for the next nearest.
    """
    with_chain = [row for row in rows if row.chain_width_mm is not None]
    beside = [
        (row.chain_width_mm - row.cog_mm).times(HALF)
        for count in whole_numbers(cogs)
        for row in nearest_row(count, with_chain)
        if row.chain_width_mm is not None
    ]
    return Span(min(each.low for each in beside), max(each.high for each in beside))


def cog_to_cover(
    *, cover_radius_mm: Span, cover_face_mm: Span, radius_mm: Span, largest_cog_face_mm: Span
) -> Span:
    """From the largest cog to the rim of the motor's cover, in mm; below zero where they overlap.

    cover_radius_mm      where the rim begins, from the axle
    cover_face_mm        how far it stands out from the shell's right face
    radius_mm            of the cog, or of the chain on it
    largest_cog_face_mm  from the shell's right face to the cog's inner face, or to the chain's
    """
    return corner_gap(across_mm=cover_radius_mm - radius_mm, along_mm=largest_cog_face_mm - cover_face_mm)
