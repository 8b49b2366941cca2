"""Forms, JSON and CSV bring the same facts and mean the same by them."""

from __future__ import annotations

import json
from typing import TypeAlias, Union

import pytest
from hypothesis import given
from hypothesis import strategies as st

from app.facts.answers import Answer, Answers
from app.facts.csv_reader import read_rows
from app.facts.form_reader import read_form
from app.facts.json_reader import read_json
from app.facts.span import Span
from app.facts.table import FACTS

Json: TypeAlias = Union[bool, int, float, str, list["Json"], dict[str, "Json"], None]  # noqa: UP007 - recursive
json_values: st.SearchStrategy[Json] = st.recursive(
    st.none() | st.booleans() | st.integers() | st.floats() | st.text(),
    lambda inner: (
        st.lists(inner) | st.dictionaries(st.text() | st.sampled_from(("value", "low", "high")), inner)
    ),
    max_leaves=6,
)
names = st.sampled_from(sorted(FACTS)) | st.text()


def test_a_form_brings_facts_tools_and_what_was_typed() -> None:
    reading = read_form(
        {
            "dropout_width_mm": " 134.6",
            "dropout_width_mm__tool": "rule or tape",
            "frame_material": "steel",
            "slot_width_mm": " ",
            "hanger": "?",
            "form_id": "7f3a",
        }
    )

    assert reading.errors == ()
    assert list(reading.answers) == ["frame_material", "dropout_width_mm", "hanger"]
    assert reading.answers.span("dropout_width_mm") == Span.around("134.6", 1)
    assert not reading.answers.is_known("hanger")
    assert reading.typed["dropout_width_mm"] == " 134.6"
    assert reading.typed["dropout_width_mm__tool"] == "rule or tape"
    assert "form_id" not in reading.typed


def test_a_form_without_facts_brings_none() -> None:
    reading = read_form({"form_id": "7f3a", "dropout_width": "135"})

    assert (reading.answers, reading.errors, dict(reading.typed)) == (Answers(), (), {})


@pytest.mark.parametrize(
    ("value", "typed", "span"),
    [
        (142, "142", Span.around(142, "0.3")),
        (142.0, "142", Span.around(142, "0.3")),
        (142.1, "142.1", Span.around("142.1", "0.3")),
        ({"value": 142.1, "plus_minus": 0.1}, "142.1 ± 0.1", Span.around("142.1", "0.1")),
        ({"value": 142, "tool": "rule or tape"}, "142", Span.around(142, 1)),
        ({"low": 141.5, "high": 142.5}, "141.5..142.5", Span.between("141.5", "142.5")),
        ("134-136", "134-136", Span.between(134, 136)),
        (None, "?", None),
        ("?", "?", None),
    ],
)
def test_a_number_in_json(value: object, typed: str, span: Span | None) -> None:
    reading = read_json({"bike": {"dropout_width_mm": value}})

    assert reading.errors == ()
    answer = reading.answers["dropout_width_mm"]
    assert (answer.typed, answer.span) == (typed, span)


def test_below_zero_in_json() -> None:
    reading = read_json({"wish": {"ambient_c": {"low": -10, "high": 5}, "headwind_ms": -2.5}})

    assert reading.errors == ()
    assert reading.answers.span("ambient_c") == Span.between(-10, 5)
    assert reading.answers.span("headwind_ms") == Span.exactly("-2.5")


def test_a_choice_in_json_is_a_word_or_the_words_still_possible() -> None:
    reading = read_json({"bike": {"hanger": "fixed", "frame_material": ["steel", "titanium"]}, "wish": None})

    assert reading.errors == ()
    assert reading.answers.words("hanger") == {"fixed"}
    assert reading.answers.words("frame_material") == {"steel", "titanium"}


def test_a_name_that_is_no_fact_is_answered_with_the_closest_that_is() -> None:
    reading = read_json({"bike": {"dropout_widht_mm": 135, "zzzz": 1}, "wishes": {}})

    assert [error.message for error in reading.errors] == [
        "There is no fact called wishes. Did you mean wish?",
        "There is no fact called dropout_widht_mm. Did you mean dropout_width_mm?",
        "There is no fact called zzzz.",
    ]


def test_a_fact_in_the_wrong_section_is_told_where_it_belongs() -> None:
    reading = read_json({"bike": {"range_km": 60}})

    assert [(error.fact, error.message) for error in reading.errors] == [
        ("range_km", "range_km belongs under wish.")
    ]
    assert not reading.answers


@pytest.mark.parametrize(("data", "shown"), [(None, "null"), ([1, [2]], "[1, […]]"), ("x", "x")])
def test_json_that_is_no_object_is_refused(data: object, shown: str) -> None:
    (of_body,) = read_json(data).errors
    (of_bike,) = read_json({"bike": data or 0}).errors

    assert of_body.message == f"Send an object with the facts under bike and wish. You sent {shown}."
    assert of_bike.message.startswith("The facts under bike must be an object. You sent ")


def test_a_number_of_5000_digits_is_too_large_like_any_other() -> None:
    (error,) = read_json({"bike": {"smallest_cog": -(10**5000)}}).errors

    assert error.message == "Smallest cog must be between 8 and 40. You typed -1e5000."


def test_a_thousand_wrong_names_are_answered_with_twenty() -> None:
    reading = read_json({"bike": {f"wrong_{number}": 1 for number in range(1000)}})

    assert len(reading.errors) == 20


@given(st.dictionaries(names, json_values))
def test_no_json_stops_the_reading(facts: dict[str, object]) -> None:
    reading = read_json({"bike": facts, "wish": facts})

    assert set(reading.answers) <= FACTS.keys()
    assert all(error.message and len(error.typed) <= 200 for error in reading.errors)
    json.dumps(dict(reading.typed))


def test_a_file_has_a_bike_on_each_line_and_an_error_stays_on_its_line() -> None:
    text = (
        "\ufeffbike,dropout_width_mm,dropout_width_mm__tool,frame_material\r\n"
        'Tourer,"134,6",rule or tape,steel\r\n'
        "\r\n"
        '"Long\r\ntail",wide,,wood\r\n'
        "Short\r\n"
    )

    rows = read_rows(text)

    assert rows.errors == ()
    assert [(row.line, row.bike) for row in rows.rows] == [(2, "Tourer"), (4, "Long\r\ntail"), (6, "Short")]
    assert rows.rows[0].reading.answers.span("dropout_width_mm") == Span.around("134.6", 1)
    assert [error.fact for error in rows.rows[1].reading.errors] == ["frame_material", "dropout_width_mm"]
    assert rows.rows[2].reading.errors == ()


@pytest.mark.parametrize("mark", [",", ";", "\t"])
def test_columns_are_parted_as_the_first_line_parts_them(mark: str) -> None:
    (row,) = read_rows(f"bike{mark}slot_width_mm\nTourer{mark}10.1\n").rows

    assert row.reading.answers["slot_width_mm"] == Answer(
        "slot_width_mm", "10.1", span=Span.between("10", "10.2")
    )


def test_a_decimal_comma_without_quotes_is_noticed() -> None:
    (row,) = read_rows("bike,slot_width_mm\nTourer,10,1\n").rows

    assert [error.message for error in row.reading.errors] == [
        "This line has 3 cells and the first line 2. Put a number with a comma in quotes."
    ]


@pytest.mark.parametrize(
    ("header", "messages"),
    [
        ("", ["The first line must name the facts, like dropout_width_mm. This file has none."]),
        ("bike,frame_materiel", ["There is no fact called frame_materiel. Did you mean frame_material?"]),
        ("hanger,bike,hanger", ["hanger stands over two columns. Keep one."]),
    ],
)
def test_what_is_wrong_with_the_first_line_is_said_once(header: str, messages: list[str]) -> None:
    rows = read_rows(f"{header}\n")

    assert [error.message for error in rows.errors] == messages
    assert rows.rows == ()


@given(st.text(), st.text())
def test_no_file_stops_the_reading(header: str, text: str) -> None:
    rows = read_rows(f"{header}\n{text}")
    known = read_rows(f"dropout_width_mm,{header}\n{text}")

    assert all(row.line >= 2 for row in rows.rows if header.strip())
    assert all(error.message for error in known.errors)
