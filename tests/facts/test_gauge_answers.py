"""An answer by a paper gauge comes with the gauge's name, by form, JSON and CSV, and is kept with it."""

from __future__ import annotations

from app.facts.answers import Answer
from app.facts.answers_json import answers_from_json, answers_to_json
from app.facts.csv_reader import read_rows
from app.facts.form_reader import read_form
from app.facts.json_reader import read_json
from app.facts.json_schema import fact_schema
from app.facts.table import FACTS

NAME = "arm-long.9dc2 weir-142-thru.8592"
FACT = "gauge_arm_clears"


def clears(gauge: str = NAME) -> Answer:
    return Answer(FACT, "yes", gauge, words=frozenset({"yes"}))


def test_a_form_brings_the_gauge_beside_the_word() -> None:
    reading = read_form({FACT: "yes", f"{FACT}__tool": f"  {NAME.replace(' ', '  ')} "})

    assert reading.errors == ()
    assert reading.answers[FACT] == clears()
    assert reading.answers.gauge(FACT) == NAME


def test_json_brings_the_gauge_beside_the_word_or_words() -> None:
    one = read_json({"bike": {FACT: {"word": "yes", "gauge": NAME}}})
    two = read_json({"bike": {FACT: {"word": ["yes", "unsure"], "gauge": NAME}}})
    bare = read_json({"bike": {FACT: "yes"}})

    assert one.answers[FACT] == clears()
    assert two.answers.words(FACT) == {"yes", "unsure"}
    assert two.answers.gauge(FACT) == NAME
    assert bare.answers[FACT] == clears("")


def test_a_choice_that_no_gauge_tells_takes_none() -> None:
    assert read_json({"bike": {"rear_brake": {"word": "disc", "gauge": NAME}}}).errors != ()
    assert read_json({"bike": {FACT: {"word": "yes", "gauge": 7}}}).errors != ()
    assert read_form({"rear_brake": "disc", "rear_brake__tool": NAME}).answers.gauge("rear_brake") == ""


def test_a_line_of_a_file_brings_the_gauge() -> None:
    (row,) = read_rows(f"bike,{FACT},{FACT}__tool\nred,yes,{NAME}\n").rows

    assert row.reading.answers[FACT] == clears()


def test_the_gauge_is_kept_with_the_answer() -> None:
    answers = read_form({FACT: "yes", f"{FACT}__tool": NAME}).answers

    assert answers_from_json(answers_to_json(answers)) == answers


def test_the_schema_tells_of_the_gauge() -> None:
    forms = str(fact_schema(FACTS[FACT]))

    assert "printed on the paper gauge" in forms
    assert "gauge" not in str(fact_schema(FACTS["rear_brake"]))
