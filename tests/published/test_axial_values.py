"""Places along the axle against published lengths; each source stands beside its number."""

from __future__ import annotations

import pytest

from app.facts.span import Span
from app.mechanics.axial_stack import from_lip, rotor_shift, shell_to_caliper
from app.mechanics.cassette import stack_of
from app.mechanics.chain_run import middle_of_cogs, off_straight_mm, rear_chainline_mm
from app.mechanics.cogs_beside import chain_beside_cog_mm, cog_to_dropout
from app.mechanics.rotor_wear import wear_of
from app.mechanics.shell_profile import shell_gap, steps_of
from tests.demo import demo_catalogue, demo_standards

STANDARDS = demo_standards()
FIVE_HUNDREDTHS = 0.05
A_TENTH = 0.1

# Published: "Clearing up FM140", peterverdone.com/clearing-up-fm140: the rotor's inner face is 15.25 mm from
# the hub's end on 135 and 3.50 mm further on hubs with sockets. 141 takes the end of 135, 148 that of 142.
PLANES = [(135, "15.25", "52.25"), (142, "18.75", "52.25"), (141, "15.25", "55.25"), (148, "18.75", "55.25")]


@pytest.mark.parametrize(("over_locknut_mm", "end_mm", "inner_face_mm"), PLANES)
def test_the_inner_face_of_the_rotor_from_the_middle_of_the_frame(
    over_locknut_mm: int, end_mm: str, inner_face_mm: str
) -> None:
    half = Span.exactly(over_locknut_mm).times("0.5")

    assert half - Span.exactly(end_mm) == Span.exactly(inner_face_mm)


@pytest.mark.parametrize(("over_locknut_mm", "end_mm", "inner_face_mm"), PLANES)
def test_the_table_of_rotor_planes_has_these_ends(
    over_locknut_mm: int, end_mm: str, inner_face_mm: str
) -> None:
    row = next(each for each in STANDARDS.rotor_planes if each.id == str(over_locknut_mm))

    from_middle = row.over_locknut_mm.times("0.5") - row.end_to_inner_face_mm

    assert row.end_to_inner_face_mm == Span.exactly(end_mm)
    assert from_middle == Span.exactly(inner_face_mm)


@pytest.mark.parametrize("name", ["weir-135-qr", "weir-142-thru", "weir-148-thru", "sluice-148-thru"])
@pytest.mark.parametrize(("thick_mm", "middle_mm"), [("1.8", "14.35"), ("2.0", "14.25"), ("2.3", "14.10")])
def test_a_rotor_on_a_usual_hub_runs_where_the_page_puts_it(name: str, thick_mm: str, middle_mm: str) -> None:
    """Derived from the same page; the demo's hubs hold the place within their own tolerance."""
    axle_set = next(each for each in demo_catalogue().axle_sets if each.id == name)
    assert axle_set.rotor_seat_mm is not None

    shift = rotor_shift(
        rotor_seat_mm=axle_set.rotor_seat_mm,
        socket_depth_mm=Span.exactly("3.5" if axle_set.end == "thru" else 0),
        rotor_thickness_mm=Span.exactly(thick_mm),
        rotor_offset_mm=Span.exactly(middle_mm),
    )

    assert shift.holds(Span.exactly(0))
    assert max(abs(end) for end in shift.ends) <= 0.15


def test_the_hub_itself_scatters_less_than_the_tolerance_of_the_demo() -> None:
    """Published: 0.005 in, ±0.13 mm, from hub end to rotor face (ferretticycles.com/blog/spacing-out)."""
    seat = next(each for each in demo_catalogue().axle_sets if each.id == "weir-135-qr").rotor_seat_mm

    assert seat is not None
    assert seat.width / 2000 == pytest.approx(0.005 * 25.4, abs=0.01)


def test_the_line_of_the_bolts_of_a_flat_mount() -> None:
    """Published: 12.20 mm from the rotor's inner face, so 64.45 mm from the middle on 135 and 142."""
    inner_face = Span.exactly("67.5") - from_lip(
        from_floor_mm=Span.exactly("18.75"), socket_depth_mm=Span.exactly("3.5")
    )

    assert inner_face + Span.exactly("12.20") == Span.exactly("64.45")


def test_a_caliper_15_mm_deep_leaves_the_shell_38_15_mm() -> None:
    """Derived: the rotor's middle stands at 53.15 mm on 135 and 142; the shell's face touches at 38.15."""
    hub = next(each for each in demo_catalogue().hubs if each.id == "tarn")
    room = shell_to_caliper(
        shell_face_mm=Span.exactly("67.5") - Span.exactly("38.15"),
        socket_depth_mm=Span.exactly(0),
        rotor_offset_mm=Span.exactly("14.35"),
        inboard_depth_mm=Span.exactly(15),
    )

    gap = shell_gap(steps=steps_of(hub), room_mm=room, nearest_mm=Span.exactly(50))

    assert gap == Span.exactly(0)


def test_ten_cogs_stand_37_2_mm_wide() -> None:
    """Published: "Chainline", ti10x.blogspot.com/2012/10/chainline.html."""
    assert abs(stack_of(Span.exactly(10), STANDARDS.cog_pitches).ends[1] - 37.2) <= A_TENTH


def test_the_middle_of_ten_cogs_in_a_130_frame() -> None:
    """Published: the same page works it out for a gap of 3 mm to the dropout, 43.43 mm."""
    right_mm, gap_mm = Span.exactly(46), Span.exactly(3)
    middle = middle_of_cogs(
        smallest_cog_face_mm=right_mm - gap_mm, stack_mm=stack_of(Span.exactly(10), STANDARDS.cog_pitches)
    )

    line = rear_chainline_mm(over_locknut_mm=Span.exactly(130), right_mm=right_mm, middle_mm=middle)

    assert abs(line.ends[0] - 43.43) <= FIVE_HUNDREDTHS


def test_a_gap_of_3_mm_holds_a_chain_for_ten_cogs_but_not_2_mm_more() -> None:
    """Published: about 2.5 to 3 mm to the dropout as found (the same page; bikegremlin.net/threads/433).

    So the room that is wanted is 2 mm or what the chain stands out, not both.
    """
    gap = cog_to_dropout(
        right_mm=Span.exactly(46), smallest_cog_face_mm=Span.exactly(43), socket_depth_mm=Span.exactly(0)
    )
    chain = chain_beside_cog_mm(Span.exactly(10), STANDARDS.cog_pitches)

    assert chain.high < gap.low < (chain + Span.exactly(2)).low


@pytest.mark.parametrize(("offset_mm", "angle_deg"), [(10, "1.33"), (20, "2.66"), (22, "2.93")])
def test_a_chain_off_straight_over_430_mm(offset_mm: int, angle_deg: str) -> None:
    """Derived: the arc tangent of offset over length."""
    off = off_straight_mm(angle_deg=Span.exactly(angle_deg), chainstay_mm=Span.exactly(430))

    assert off.ends[0] - A_TENTH <= offset_mm <= off.ends[1] + A_TENTH


@pytest.mark.parametrize("printed_mm", ["1.5", "1.52", "1.55"])
def test_rotors_of_1_8_mm_are_worn_where_their_print_says(printed_mm: str) -> None:
    """Published: feedbacksports.com/mechanics-corner-disc-brake-rotor-wear."""
    assert wear_of(Span.exactly("1.7"), STANDARDS.rotor_thicknesses).least_mm.holds(Span.exactly(printed_mm))
