"""Whatever is wrong with an answer, the shop gets one sentence that says what to do, and its text back."""

from __future__ import annotations

import pytest

from app.facts.csv_reader import read_rows
from app.facts.fact import ChoiceFact, Fact, NumberFact
from app.facts.form_reader import read_form
from app.facts.json_reader import read_json
from app.facts.reading import Reading
from app.facts.table import FACTS
from tests.facts.bad_entries import BAD, WRONG_TYPES, as_csv, as_json, as_number, begins

UNTOUCHED = {"frame_material": "steel", "smallest_cog": "11"}


def assert_refused(reading: Reading, fact: Fact, sentence: str, typed: str) -> None:
    """One error at this fact; what was typed is there to be shown again; other answers stay."""
    errors = [error for error in reading.errors if error.fact == fact.name and not error.also]
    assert len(errors) == 1
    assert errors[0].message.startswith(sentence)
    assert errors[0].typed == reading.typed[fact.name]
    assert errors[0].typed.removesuffix("…") == typed[: len(errors[0].typed.removesuffix("…"))]
    assert len(errors[0].typed) == min(len(typed), 200)
    assert fact.name not in reading.answers
    assert set(reading.answers) == UNTOUCHED.keys() - {fact.name}


@pytest.mark.parametrize("kind", BAD)
@pytest.mark.parametrize("fact", FACTS.values(), ids=lambda fact: fact.name)
def test_a_bad_entry_in_a_form_or_a_file(fact: Fact, kind: str) -> None:
    typed = BAD[kind].text(as_number(fact))
    fields = UNTOUCHED | {fact.name: typed}

    from_form = read_form(fields)
    (row,) = read_rows(as_csv(fields)).rows

    for reading in (from_form, row.reading):
        assert_refused(reading, fact, begins(fact, BAD[kind]), typed)
    assert row.line == 2


@pytest.mark.parametrize("kind", BAD)
@pytest.mark.parametrize("fact", FACTS.values(), ids=lambda fact: fact.name)
def test_a_bad_value_in_json(fact: Fact, kind: str) -> None:
    value = BAD[kind].value(as_number(fact))

    reading = read_json(as_json({**UNTOUCHED, fact.name: value}))

    errors = [error for error in reading.errors if error.fact == fact.name]
    wrong_type = isinstance(fact, ChoiceFact) and not isinstance(value, str)
    sentence = f"{fact.label} must be one of these, a list of them, or null: "
    assert_refused(reading, fact, sentence if wrong_type else begins(fact, BAD[kind]), errors[0].typed)


@pytest.mark.parametrize("fact", FACTS.values(), ids=lambda fact: fact.name)
def test_a_wrong_type_in_json_is_told_what_is_allowed(fact: Fact) -> None:
    expected = "one of these, a list of them, or null: "
    if isinstance(fact, NumberFact):
        expected = "a number, a text like 134..136, null, an object with "

    for value, shown in WRONG_TYPES:
        reading = read_json(as_json({**UNTOUCHED, fact.name: value}))

        assert_refused(reading, fact, f"{fact.label} must be {expected}", shown)
        assert reading.errors[0].message.endswith(f"You sent {shown}.")


@pytest.mark.parametrize("fact", FACTS.values(), ids=lambda fact: fact.name)
def test_a_wrong_type_in_a_form_or_a_file_is_only_another_rubbish(fact: Fact) -> None:
    in_form = read_form({**UNTOUCHED, fact.name: object()})
    (row,) = read_rows(as_csv(UNTOUCHED | {fact.name: '{"value": "wide"}'})).rows

    assert_refused(in_form, fact, begins(fact, BAD["rubbish"]), "(file)")
    assert_refused(row.reading, fact, begins(fact, BAD["rubbish"]), '{"value": "wide"}')


@pytest.mark.parametrize("fact", FACTS.values(), ids=lambda fact: fact.name)
def test_an_empty_entry_is_an_error_only_where_an_answer_is_owed(fact: Fact) -> None:
    verb = "Enter" if isinstance(fact, NumberFact) else "Select"
    sentence = f"{verb} the {fact.label[0].lower()}{fact.label[1:]}, or "
    fields = UNTOUCHED | {fact.name: ""}

    assert_refused(read_form(fields, required=[fact.name]), fact, sentence, "")
    assert_refused(read_json(as_json({**fields})), fact, sentence, "")
    assert read_form(fields).errors == ()
    assert read_rows(as_csv(fields)).rows[0].reading.errors == ()
