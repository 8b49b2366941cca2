"""The motor's shell, step by step, beside the inner half of the caliper."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from app.catalogue.along_axle import ShellPart, ShellStep
from app.facts.span import Span
from app.mechanics.shell_profile import shell_face_of, shell_gap, steps_of
from tests.demo import demo_catalogue

AXLE_SETS = {each.id: each for each in demo_catalogue().axle_sets}


def step(radius_mm: int, inboard_mm: str) -> ShellStep:
    return ShellStep(radius_mm=Span.exactly(radius_mm), inboard_mm=Span.exactly(inboard_mm))


STEPPED = (step(40, "-4"), step(90, "0"), step(110, "3"))


def gap(steps: tuple[ShellStep, ...], nearest_mm: str, room_mm: str = "2") -> Span:
    return shell_gap(steps=steps, nearest_mm=Span.exactly(nearest_mm), room_mm=Span.exactly(room_mm))


def test_a_shell_without_steps_is_a_drum_of_its_radius() -> None:
    hub = ShellPart(id="drum", name="Drum", shell_radius_mm=Span.exactly(110))

    assert steps_of(hub) == (step(110, "0"),)


def test_a_shell_of_which_nothing_is_given_has_no_steps() -> None:
    assert steps_of(ShellPart(id="unknown", name="Unknown")) == ()


def test_the_boss_in_the_middle_decides_for_a_caliper_that_comes_near_the_axle() -> None:
    assert gap(STEPPED, "38") == Span.exactly(-2)


def test_beyond_the_boss_the_face_decides() -> None:
    assert gap(STEPPED, "60") == Span.exactly(2)


def test_beyond_the_face_the_rim_which_lies_further_in_decides() -> None:
    assert gap(STEPPED, "100") == Span.exactly(5)


def test_outside_of_all_steps_a_caliper_may_reach_in_past_the_shell() -> None:
    assert gap(STEPPED, "115", room_mm="-9") == Span.exactly(5)


def test_the_pieces_on_the_axle_say_where_the_shell_begins_if_nothing_else_does() -> None:
    assert AXLE_SETS["weir-130-qr"].shell_face_mm is None
    assert shell_face_of(AXLE_SETS["weir-130-qr"]) == Span.exactly("26.9")
    assert shell_face_of(AXLE_SETS["penstock-197-thru"]) is None


ends = st.tuples(st.integers(20_000, 130_000), st.integers(0, 30_000))


@given(ends, st.tuples(st.integers(-9000, 9000), st.integers(0, 4000)), st.data())
def test_a_closer_reading_gives_a_gap_within_the_old_one(
    nearest: tuple[int, int], room: tuple[int, int], data: st.DataObject
) -> None:
    wide = [Span(low, low + width) for low, width in (nearest, room)]
    close = [Span(at, at) for at in (data.draw(st.integers(each.low, each.high)) for each in wide)]

    before = shell_gap(steps=STEPPED, nearest_mm=wide[0], room_mm=wide[1])
    after = shell_gap(steps=STEPPED, nearest_mm=close[0], room_mm=close[1])

    assert before.holds(after)


@given(st.integers(20, 130), st.integers(-9, 9), st.integers(0, 20))
def test_a_larger_step_never_makes_more_room(nearest_mm: int, room_mm: int, grown_mm: int) -> None:
    larger = (*STEPPED[:2], step(110 + grown_mm, "3"))

    assert gap(larger, str(nearest_mm), str(room_mm)).low <= gap(STEPPED, str(nearest_mm), str(room_mm)).low
