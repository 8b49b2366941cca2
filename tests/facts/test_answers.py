"""Answers stay as they were given, in the order of the table, and come back from the store unchanged."""

from __future__ import annotations

import json

import pytest

from app.facts.answers import Answer, Answers, choice, number
from app.facts.answers_json import StoredAnswersError, answers_from_json, answers_to_json
from app.facts.form_reader import read_form
from app.facts.span import Span

TYPED = {
    "frame_material": "steel, titanium",
    "dropout_width_mm": "134,6",
    "dropout_width_mm__tool": "rule or tape",
    "hanger": "?",
    "ambient_c": "-10..5",
}


def test_what_is_not_answered_is_the_widest_the_trade_allows() -> None:
    answers = Answers()

    assert answers.span("dropout_width_mm") == Span.between(80, 220)
    assert answers.words("rotor_fixing") == {"six_bolt", "center_lock"}
    assert not answers.is_known("dropout_width_mm")


def test_answers_stand_in_the_order_of_the_table() -> None:
    answers = Answers().with_(number("range_km", Span.exactly(60)), choice("frame_material", ["steel"]))

    assert list(answers) == ["frame_material", "range_km"]
    assert list(answers.without("frame_material")) == ["range_km"]


def test_a_fact_outside_the_table_is_refused() -> None:
    with pytest.raises(KeyError, match="saddle_height_mm"):
        Answers().with_(Answer("saddle_height_mm", "700"))


def test_a_number_is_no_choice() -> None:
    with pytest.raises(TypeError, match="is a number"):
        Answers().words("dropout_width_mm")
    with pytest.raises(TypeError, match="is a choice"):
        Answers().span("rotor_fixing")


def test_answers_come_back_from_the_store_as_they_were() -> None:
    answers = read_form(TYPED).answers

    kept = json.loads(json.dumps(answers_to_json(answers)))

    assert answers_from_json(kept) == answers
    assert kept["dropout_width_mm"] == {
        "typed": "134,6",
        "tool": "rule or tape",
        "low": 133600,
        "high": 135600,
    }
    assert kept["frame_material"] == {"typed": "steel, titanium", "words": ["steel", "titanium"]}
    assert kept["hanger"] == {"typed": "?"}


@pytest.mark.parametrize(
    "kept",
    [
        {"saddle_height_mm": {"typed": "700"}},
        {"dropout_width_mm": "135"},
        {"dropout_width_mm": {"low": 1, "high": 2}},
        {"dropout_width_mm": {"typed": "135", "low": 2, "high": 1}},
        {"dropout_width_mm": {"typed": "135", "low": 2}},
        {"dropout_width_mm": {"typed": "135", "low": 1.5, "high": 2.5}},
        {"dropout_width_mm": {"typed": "135", "words": ["steel"]}},
        {"frame_material": {"typed": "wood", "words": ["wood"]}},
        {"frame_material": {"typed": "", "words": []}},
        {"frame_material": {"typed": "135", "low": 1, "high": 2}},
    ],
)
def test_kept_answers_that_fit_no_fact_are_refused_by_name(kept: dict[str, object]) -> None:
    (name,) = kept

    with pytest.raises(StoredAnswersError, match=name):
        answers_from_json(kept)
