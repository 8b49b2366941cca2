"""How choices are read, and how every answer is said back."""

from __future__ import annotations

import pytest

from app.facts.answers import Answer, number
from app.facts.fact import NumberFact
from app.facts.reading import FactError, read_answer
from app.facts.shown import what_we_read
from app.facts.span import Span
from app.facts.table import FACTS


@pytest.mark.parametrize(
    ("name", "typed", "words"),
    [
        ("frame_material", "steel", {"steel"}),
        ("frame_material", " Steel ", {"steel"}),
        ("frame_material", "S", {"steel"}),
        ("frame_material", "steel, titanium", {"steel", "titanium"}),
        ("frame_material", "Steel or titanium", {"steel", "titanium"}),
        ("dropout_kind", "Closed, with thru-axle", {"thru_axle"}),
        ("thru_axle_pitch_mm", "1.5", {"1.5"}),
        ("thru_axle_pitch_mm", "1,5", {"1.5"}),
        ("thru_axle_pitch_mm", "1.5; 1.75", {"1.5", "1.75"}),
        ("cassette_interface", "HG, 8 to 10 speed", {"hg"}),
        ("region", "2", {"us_class_2"}),
    ],
)
def test_a_choice_is_read_as(name: str, typed: str, words: set[str]) -> None:
    answer = read_answer(FACTS[name], typed)

    assert answer == Answer(name, typed, words=frozenset(words))


@pytest.mark.parametrize("typed", ["wood", "steel, wood", "steel,", "s, t"])
def test_an_unknown_word_is_refused_with_the_words_there_are(typed: str) -> None:
    error = read_answer(FACTS["frame_material"], typed)

    assert isinstance(error, FactError)
    assert error.message == (
        "Frame material must be one of these: steel, aluminium, titanium, carbon, magnesium, other. "
        f"You typed {typed}."
    )


def test_no_choice_is_asked_for_by_the_name_of_the_fact() -> None:
    error = read_answer(FACTS["rear_brake"], "")

    assert isinstance(error, FactError)
    assert error.message == "Select the kind of brake, or I don't know"


@pytest.mark.parametrize(
    ("name", "typed", "shown"),
    [
        ("dropout_width_mm", "134.6", "134.6\u202fmm ± 0.3"),
        ("dropout_width_mm", "134,65", "134.65\u202fmm ± 0.30"),
        ("dropout_width_mm", "5 5/16 in", "134.9\u202fmm ± 0.8"),
        ("dropout_width_mm", "134-136", "134 to 136\u202fmm"),
        ("dropout_width_mm", "134.5..136", "134.5 to 136.0\u202fmm"),
        ("dropout_width_mm", "5 1/4..5.37 in", "133.35 to 136.40\u202fmm"),
        ("dropout_width_mm", "5.2501..5.37 in", "133.35 to 136.40\u202fmm"),
        ("dropout_width_mm", "<140", "80 to 140\u202fmm"),
        ("dropout_width_mm", "81 ± 5", "80 to 86\u202fmm"),
        ("dropout_width_mm", "135..135", "135\u202fmm"),
        ("dropout_width_mm", "?", "Not known"),
        ("rotor_thickness_mm", "1.76", "1.76\u202fmm ± 0.02"),
        ("chainstay_length_mm", "430", "430\u202fmm ± 2"),
        ("stay_angle_deg", "-5", "-5.0° ± 1.0"),
        ("ambient_c", "20", "20\u202f°C"),
        ("smallest_cog", "11", "11"),
        ("frame_material", "titanium, steel", "Steel or Titanium"),
        ("frame_material", "?", "Not known"),
    ],
)
def test_an_answer_is_said_back(name: str, typed: str, shown: str) -> None:
    fact = FACTS[name]

    answer = read_answer(fact, typed)

    assert isinstance(answer, Answer)
    assert what_we_read(fact, answer) == shown


def test_an_answer_that_was_never_typed_is_said_back_as_a_reading() -> None:
    answer = number("dropout_width_mm", Span.around(135, "0.5"))

    assert what_we_read(FACTS["dropout_width_mm"], answer) == "135.0\u202fmm ± 0.5"


@pytest.mark.parametrize("fact", [fact for fact in FACTS.values() if isinstance(fact, NumberFact)])
def test_what_is_said_back_can_be_typed_again(fact: NumberFact) -> None:
    middle = (fact.usual.low + fact.usual.high) // 2000
    first = read_answer(fact, str(middle))
    assert isinstance(first, Answer)

    second = read_answer(fact, what_we_read(fact, first))

    assert isinstance(second, Answer)
    assert second.span == first.span
