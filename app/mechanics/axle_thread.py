"""How much thread of an axle is left to hold by: under a nut, or in the frame at the end of a thru-axle."""

from __future__ import annotations

from fractions import Fraction

from app.facts.span import Span

HALF = Fraction(1, 2)


def thru_axle_engagement_mm(
    *,
    under_head_mm: Span,
    thread_mm: Span,
    added_mm: Span,
    thickness_mm: Span,
    lip_to_lip_mm: Span,
    socket_depth_mm: Span,
) -> Span:
    """Thread of a thru-axle in the frame, in mm; below zero by as much as the axle ends short of it.

    under_head_mm    from the underside of the head to the far end
    thread_mm        threaded part: no more than this can hold
    added_mm         what the kit lays between the head and the dropout
    thickness_mm     of the dropout under the head, from its outer face to its lip
    lip_to_lip_mm    between the dropouts
    socket_depth_mm  of the threaded dropout alone: the thread is taken to begin at the floor of its socket
    """
    on_the_way = added_mm + thickness_mm + lip_to_lip_mm + socket_depth_mm
    return (under_head_mm - on_the_way).at_most(thread_mm)


def nut_thread_mm(
    *, axle_length_mm: Span, over_locknut_mm: Span, thickness_mm: Span, washers_mm: Span
) -> Span:
    """Thread of a bolt-on axle that stands out for the nut on one side, in mm; both ends alike.

    axle_length_mm  from end to end
    thickness_mm    of one dropout
    washers_mm      on one side, a torque washer included
    """
    return stub_mm(axle_length_mm=axle_length_mm, over_locknut_mm=over_locknut_mm) - thickness_mm - washers_mm


def stub_mm(*, axle_length_mm: Span, over_locknut_mm: Span) -> Span:
    """How far an axle's end stands out beyond the hub's face on one side, in mm; both ends alike."""
    return (axle_length_mm - over_locknut_mm).times(HALF)
