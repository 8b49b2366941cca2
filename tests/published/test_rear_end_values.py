"""Rear ends, rotor planes and axle ends against published lengths; each source stands beside its number."""

from __future__ import annotations

import pytest

from app.facts.answers import Answers, choice, number
from app.facts.span import Span
from app.mechanics.axial_stack import from_lip, rotor_shift, shell_to_caliper
from app.mechanics.axle_thread import stub_mm
from app.mechanics.rear_end import floor_to_floor_mm
from app.rules.axle.width import dropout_width
from app.rules.evaluate import Bench
from app.rules.outcome import Outcome
from tests.demo import demo_catalogue, demo_standards

SOCKET_MM = Span.exactly("3.5")
AXLE_SETS = {each.id: each for each in demo_catalogue().axle_sets}

# Published: 142 is 135 with 3.5 mm more at each end ("142x12 explained", trekmountain.typepad.com;
# "Understanding rear chainline", bikegremlin.net/threads/433). 150 and 157: "A guide to mountain bike
# axle standards", bikeradar.com. The other pairs follow by the same sockets.
PAIRS = [(135, 142), (150, 157), (141, 148), (170, 177), (190, 197)]


@pytest.mark.parametrize(("lip_mm", "hub_mm"), PAIRS)
def test_a_socket_of_3_5_mm_a_side_makes_the_wider_hub(lip_mm: int, hub_mm: int) -> None:
    width = floor_to_floor_mm(lip_to_lip_mm=Span.exactly(lip_mm), socket_depth_mm=SOCKET_MM)

    assert width == Span.exactly(hub_mm)


# Common practice, no source: three rear ends that every shop knows.
@pytest.mark.parametrize(
    ("kind", "lip_mm", "socket_mm", "axle_set"),
    [
        ("slotted_vertical", "135.2", None, "weir-135-qr"),
        ("thru_axle", "135.0", "3.5", "weir-142-thru"),
        ("thru_axle", "141.0", "3.5", "weir-148-thru"),
    ],
)
def test_a_rear_end_takes_its_own_axle_set_and_no_other(
    kind: str, lip_mm: str, socket_mm: str | None, axle_set: str
) -> None:
    answers = Answers().with_(
        choice("dropout_kind", {kind}),
        choice("frame_material", {"aluminium"}),
        number("dropout_width_mm", Span.around(lip_mm, "0.3")),
    )
    if socket_mm is not None:
        answers = answers.with_(number("socket_depth_mm", Span.around(socket_mm, "0.2")))

    bench = Bench(dropout_width, answers, demo_catalogue(), demo_standards())

    passed = {name for name in AXLE_SETS if bench.result((AXLE_SETS[name],)).outcome is Outcome.PASSED}
    assert axle_set in passed
    assert not passed & ({"weir-135-qr", "weir-142-thru", "weir-148-thru"} - {axle_set})


# Published: the rotor's inner face is 15.25 mm from the hub's end on a 135 hub and 3.50 mm more on hubs
# with sockets, so 15.25 mm from the lip on both ("Clearing up FM140", peterverdone.com/clearing-up-fm140).
@pytest.mark.parametrize(("end_mm", "socket_mm"), [("15.25", 0), ("18.75", "3.5")])
def test_the_rotor_keeps_its_place_from_the_lip(end_mm: str, socket_mm: str | int) -> None:
    place = from_lip(from_floor_mm=Span.exactly(end_mm), socket_depth_mm=Span.exactly(socket_mm))

    assert place == Span.exactly("15.25")


@pytest.mark.parametrize(("thick_mm", "middle_mm"), [("1.8", "14.35"), ("2.0", "14.25"), ("2.3", "14.10")])
def test_a_new_rotor_runs_where_the_caliper_expects_it(thick_mm: str, middle_mm: str) -> None:
    """Derived from the same page: the middle of the rotor is half its thickness nearer to the lip."""
    shift = rotor_shift(
        rotor_seat_mm=Span.exactly("18.75"),
        socket_depth_mm=SOCKET_MM,
        rotor_thickness_mm=Span.exactly(thick_mm),
        rotor_offset_mm=Span.exactly(middle_mm),
    )

    assert shift == Span.exactly(0)


def test_a_caliper_of_15_mm_leaves_the_shell_38_15_mm_from_the_middle() -> None:
    """Derived: the rotor's middle stands at 53.15 mm on 135 and 142, less 15 mm of caliper."""
    room = shell_to_caliper(
        shell_face_mm=Span.exactly("67.5") - Span.exactly("38.15"),
        socket_depth_mm=Span.exactly(0),
        rotor_offset_mm=Span.exactly("14.35"),
        inboard_depth_mm=Span.exactly(15),
    )

    assert room == Span.exactly(0)


def test_a_quick_release_axle_stands_out_5_5_mm_a_side() -> None:
    """Published: 11 mm longer than the hub is wide ("Spacing", sheldonbrown.com/gloss_sp-ss.html)."""
    stub = stub_mm(axle_length_mm=Span.exactly(146), over_locknut_mm=Span.exactly(135))

    assert stub == Span.exactly("5.5")
