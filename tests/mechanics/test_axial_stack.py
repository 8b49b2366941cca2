"""Where rotor, caliper, arm and shell lie along the axle."""

import pytest

from app.facts.span import Span
from app.mechanics.axial_stack import OPEN_DROPOUT, rotor_shift, shell_to_caliper


@pytest.mark.parametrize(
    ("end_to_inner_face_mm", "socket_mm"),
    [pytest.param("15.25", "0", id="135, open dropouts"), pytest.param("18.75", "3.5", id="142, sockets")],
)
def test_rotors_of_socket_hubs_run_where_those_of_open_dropouts_do(
    end_to_inner_face_mm: str, socket_mm: str
) -> None:
    """Source: peterverdone.com/clearing-up-fm140: inner face 15.25 mm from the end, 3.5 more in sockets."""
    shift = rotor_shift(
        rotor_seat_mm=Span.exactly(end_to_inner_face_mm),
        socket_depth_mm=Span.exactly(socket_mm),
        rotor_thickness_mm=Span.exactly("1.8"),
        rotor_offset_mm=Span.exactly("14.35"),
    )

    assert shift == Span(0, 0)


def test_a_rotor_seat_further_in_runs_the_rotor_further_in() -> None:
    shift = rotor_shift(
        rotor_seat_mm=Span.exactly("17.0"),
        socket_depth_mm=OPEN_DROPOUT,
        rotor_thickness_mm=Span.exactly("2.0"),
        rotor_offset_mm=Span.around("14.5", "0.5"),
    )

    assert shift == Span.around("1.5", "0.5")


def test_a_socket_brings_the_shell_nearer_to_the_caliper() -> None:
    gap = shell_to_caliper(
        shell_face_mm=Span.exactly(35),
        socket_depth_mm=Span.around("3.5", "0.2"),
        rotor_offset_mm=Span.exactly("14.35"),
        inboard_depth_mm=Span.exactly(15),
    )

    assert gap == Span.around("2.15", "0.2")
