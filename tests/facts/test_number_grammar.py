"""What can be typed for a number, and what it is read as."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from app.facts.answers import Answer
from app.facts.fact import NumberFact
from app.facts.number_reader import read_number
from app.facts.reading import FactError, read_answer
from app.facts.span import Span
from app.facts.table import FACTS

LIKE_135 = "Dropout width must be a number, like 135 or 134.6"

# With calipers, the first tool for dropouts, ± 0.3 mm.
DROPOUT_WIDTH = [
    ("134.6", "134.3", "134.9"),
    ("134,6", "134.3", "134.9"),
    ("134.6mm", "134.3", "134.9"),
    (" 134.6 ", "134.3", "134.9"),
    ("134.6\u202fmm", "134.3", "134.9"),
    ("\uff11\uff13\uff14\uff0e\uff16", "134.3", "134.9"),
    ("134½ mm", "134.2", "134.8"),
    ("134.6 ± 0.2", "134.4", "134.8"),
    ("134.6+-0.2", "134.4", "134.8"),
    ("134.6 +/- 0.5 mm", "134.1", "135.1"),
    ("134.6 mm ± 1 mm", "133.6", "135.6"),
    ("134.6 ± 0", "134.55", "134.65"),
    ("134..136", "134", "136"),
    ("134…136", "134", "136"),
    ("134 to 136 mm", "134", "136"),
    ("134-136", "134", "136"),
    ("134 \u2013 136", "134", "136"),
    ("134\u2212136", "134", "136"),
    ("134..134", "134", "134"),
    ("134..900", "134", "220"),
    ("<140", "80", "140"),
    ("≤ 140 mm", "80", "140"),
    (">130", "130", "220"),
    (">=130", "130", "220"),
    ("<900", "80", "220"),
    ("81 ± 5", "80", "86"),
    ("218 ± 5", "213", "220"),
    ("134\u200b.6", "134.3", "134.9"),
    ("\u0661\u0663\u0665", "134.7", "135.3"),
    ("134.6 / 134.8 / 134.7", "134.3", "134.9"),
    ("134.6/134.8", "134.3", "134.9"),
    ("134;136;135", "133", "135"),
    ("134.6; 134.8 ± 0.5", "134.1", "135.1"),
    ("1.35e2", "134.7", "135.3"),
]
# Half of 1/16 in is 0.79375 mm, half of 0.01 in is 0.127 mm, half of 0.1 in is 1.27 mm.
IN_INCHES = [
    ("5 5/16 in", "134.143", "135.732"),
    ("5-5/16 inch", "134.143", "135.732"),
    ("5.31\u2033", "134.574", "135.174"),
    ('5.31"', "134.574", "135.174"),
    ("5.3''", "133.35", "135.89"),
    ("5.31 in ± 0.02 in", "134.366", "135.382"),
    ("5 1/4..5 3/8 in", "133.35", "136.525"),
    ("5 1/4-5 3/8 in", "133.35", "136.525"),
    ("<5.5 in", "80", "139.7"),
    ("5 5/16 in; 5 5/16 in", "134.143", "135.732"),
    ("5½ in", "133.35", "146.05"),
]


def read(name: str, typed: str, tool: str = "") -> Span | None:
    answer = read_answer(FACTS[name], typed, tool)
    assert isinstance(answer, Answer), answer
    assert answer.typed == typed
    return answer.span


def refused(name: str, typed: str, tool: str = "") -> str:
    error = read_answer(FACTS[name], typed, tool)
    assert isinstance(error, FactError), error
    assert (error.fact, error.typed) == (name, typed)
    return error.message


@pytest.mark.parametrize(("typed", "low", "high"), DROPOUT_WIDTH + IN_INCHES)
def test_a_dropout_width_is_read_as(typed: str, low: str, high: str) -> None:
    assert read("dropout_width_mm", typed) == Span.between(low, high)


@pytest.mark.parametrize("typed", ["?", " \uff1f ", "I don't know", "I don\u2019t know", "Not known"])
def test_not_known_is_an_answer(typed: str) -> None:
    assert read("dropout_width_mm", typed) is None


def test_a_tape_gives_a_millimetre_and_cannot_be_talked_into_less_than_half_of_one() -> None:
    assert read("dropout_width_mm", "134.6", "rule or tape") == Span.between("133.6", "135.6")
    assert read("dropout_width_mm", "134.6 ± 0.1", "rule or tape") == Span.between("134.1", "135.1")
    assert read("dropout_width_mm", "134.6 ± 2", "rule or tape") == Span.between("132.6", "136.6")


@pytest.mark.parametrize(
    ("name", "middle"), [("dropout_width_mm", "120"), ("dropout_thickness_mm", "10"), ("chainline_mm", "50")]
)
def test_the_fact_says_which_of_three_readings_counts(name: str, middle: str) -> None:
    span = read(name, f"{middle}; {int(middle) + 4}; {int(middle) - 2}")

    counts = {"dropout_width_mm": 118, "dropout_thickness_mm": 14, "chainline_mm": 50}[name]
    assert span == Span.around(counts, 3)


@pytest.mark.parametrize(
    ("name", "typed", "low", "high"),
    [
        ("stay_angle_deg", "\u22125", "-6", "-4"),
        ("stay_angle_deg", "-5..10", "-5", "10"),
        ("stay_angle_deg", "9.4°", "8.4", "10.4"),
        ("stay_angle_deg", "9.4 deg ± 0.5", "8.9", "9.9"),
        ("stay_offset_mm", "\uff0d2½", "-3.5", "-1.5"),
        ("ambient_c", "-10 °C", "-10", "-10"),
        ("headwind_ms", "-3 m/s", "-3", "-3"),
        ("cruise_kmh", "25 km/h", "25", "25"),
        ("steepest_grade_pct", "8 %", "7.5", "8.5"),
        ("climb_minutes", "12 min", "12", "12"),
        ("own_pack_full_v", "54.6 V", "54.6", "54.6"),
        ("smallest_cog", "11T", "11", "11"),
        ("rim_holes", "32..36", "32", "36"),
        ("cable_run_mm", "1\u202f200 mm", "1180", "1220"),
    ],
)
def test_other_facts_are_read_as(name: str, typed: str, low: str, high: str) -> None:
    assert read(name, typed) == Span.between(low, high)


@pytest.mark.parametrize(
    ("typed", "message"),
    [
        ("wide", LIKE_135),
        ("135 cm", LIKE_135),
        ("134.6.2", LIKE_135),
        ("134 136", LIKE_135),
        ("134.6 /", LIKE_135),
        ("134 ± wide", LIKE_135),
        ("134 ± -1", LIKE_135),
        ("5\u00b2", LIKE_135),
        ("5 1/0 in", LIKE_135),
        ("nan", LIKE_135),
        ("Infinity", LIKE_135),
        ("134\x00", LIKE_135),
        ("1,234", "1,234 could mean 1.234 or 1234. Write 1.234 or 1234."),
        ("134..136,500", "136,500 could mean 136.500 or 136500. Write 136.500 or 136500."),
        ("136..134", "The first number must be the smaller one"),
        ("136-134", "The first number must be the smaller one"),
        ("1.234,567", LIKE_135),
        ("1;2;3;4", "Give three readings at most"),
        ("1346", "Dropout width must be between 80 and 220\u202fmm. You typed 1346; did you mean 134.6?"),
        ("13.46", "Dropout width must be between 80 and 220\u202fmm. You typed 13.46; did you mean 134.6?"),
        ("70", "Dropout width must be between 80 and 220\u202fmm. You typed 70."),
        ("-135", "Dropout width must be between 80 and 220\u202fmm. You typed -135."),
        ("<70", "Dropout width must be between 80 and 220\u202fmm. You typed <70."),
        ("10..20", "Dropout width must be between 80 and 220\u202fmm. You typed 10..20."),
        ("53.1 in", "Dropout width must be between 80 and 220\u202fmm. You typed 53.1 in."),
        ("1e9999", "Dropout width must be between 80 and 220\u202fmm. You typed 1e9999."),
        ("", "Enter the dropout width, or choose I don't know"),
        ("\u00a0", "Enter the dropout width, or choose I don't know"),
    ],
)
def test_a_dropout_width_is_refused_with(typed: str, message: str) -> None:
    assert refused("dropout_width_mm", typed) == message


def test_a_range_of_a_fact_that_can_be_below_zero_needs_its_dots() -> None:
    assert refused("stay_angle_deg", "5-10") == "Write a range with two dots, like -10..15"


def test_a_count_is_whole() -> None:
    assert refused("largest_cog", "28.5") == "Largest cog must be a whole number, like 32"
    assert refused("largest_cog", "28 ± 0.5") == "Largest cog must be a whole number, like 32"


def test_a_slash_between_small_numbers_is_not_guessed() -> None:
    message = "1/2 could be a fraction or two readings. Write a number with a point, or 1; 2."

    assert refused("socket_depth_mm", "1/2") == message
    assert read("socket_depth_mm", "1 / 2") == Span.between(1, 2)
    assert read("socket_depth_mm", "½") == Span.between("0.3", "0.7")


def test_an_unknown_tool_is_refused_by_name() -> None:
    message = "The tool for dropout width must be one of these: calipers, rule or tape. You typed eye."

    assert refused("dropout_width_mm", "135", "eye") == message


def test_a_text_over_200_characters_comes_back_cut() -> None:
    error = read_answer(FACTS["dropout_width_mm"], "135" * 100)

    assert isinstance(error, FactError)
    assert error.message == "Dropout width must be 200 characters at most. You typed 300."
    assert len(error.typed) == 200


@given(st.integers(80_000, 220_000), st.integers(0, 40_000), st.integers(0, 40_000))
def test_a_wider_uncertainty_holds_the_narrower(thousandths: int, half: int, more: int) -> None:
    fact = FACTS["dropout_width_mm"]
    assert isinstance(fact, NumberFact)
    value = f"{thousandths // 1000}.{thousandths % 1000:03}"

    narrow = read_number(fact, f"{value} ± {half / 1000:.3f}")
    wide = read_number(fact, f"{value} ± {(half + more) / 1000:.3f}")

    assert narrow is not None
    assert wide is not None
    assert wide.holds(narrow)
    assert narrow.low <= thousandths <= narrow.high


@given(st.sampled_from(list(FACTS)), st.text(max_size=230))
def test_no_text_stops_the_reading(name: str, typed: str) -> None:
    result = read_answer(FACTS[name], typed)

    assert result.fact == name
    assert isinstance(result, Answer) or result.message
