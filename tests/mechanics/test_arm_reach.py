"""How much of a stay an arm's clamp can use."""

from app.facts.span import Span
from app.mechanics.arm_reach import stretch_in_reach


def stretch(clear_from_mm: Span, clear_to_mm: Span) -> Span:
    return stretch_in_reach(
        clear_from_mm=clear_from_mm,
        clear_to_mm=clear_to_mm,
        reach_from_mm=Span.exactly(90),
        reach_to_mm=Span.exactly(150),
    )


def test_a_stay_that_is_free_all_along_gives_the_whole_reach() -> None:
    assert stretch(Span.exactly(40), Span.exactly(300)) == Span.exactly(60)


def test_a_caliper_on_the_stay_takes_the_near_part() -> None:
    assert stretch(Span.around(120, 1), Span.exactly(300)) == Span.around(30, 1)


def test_a_boss_within_the_reach_takes_the_far_part() -> None:
    assert stretch(Span.exactly(40), Span.exactly(118)) == Span.exactly(28)


def test_a_stay_that_is_free_only_beyond_the_reach_falls_short() -> None:
    assert stretch(Span.exactly(170), Span.exactly(300)) == Span.exactly(-20)
