"""The description of the JSON names every fact with its limits, and nothing that would be refused."""

from __future__ import annotations

import json
from typing import Any

from app.facts.fact import ChoiceFact, NumberFact
from app.facts.json_reader import read_json, section_of
from app.facts.json_schema import facts_schema
from app.facts.table import FACTS


def described() -> dict[str, Any]:
    schema: dict[str, Any] = json.loads(json.dumps(facts_schema()))
    bike, wish = (schema["properties"][section]["properties"] for section in ("bike", "wish"))
    assert not bike.keys() & wish.keys()
    return {**bike, **wish}


def test_every_fact_is_described_by_its_label_unit_and_way_of_measuring() -> None:
    facts = described()

    assert list(facts) == list(FACTS)
    assert facts["dropout_width_mm"]["title"] == "Dropout width"
    assert facts["dropout_width_mm"]["description"].startswith("In mm. Wheel out")


def test_each_example_is_read_without_a_fault() -> None:
    for name, schema in described().items():
        for example in schema["examples"]:
            reading = read_json({section_of(FACTS[name]): {name: example}})

            assert reading.errors == ()
            assert reading.answers.is_known(name) is (example is not None)


def test_each_tool_stands_with_how_far_off_it_can_be() -> None:
    tool = described()["dropout_width_mm"]["anyOf"][1]["properties"]["tool"]

    assert tool["enum"][0] == "calipers"
    assert tool["description"].startswith("calipers: ± 0.3; ")


def test_the_ends_of_each_number_and_each_word_are_read_as_described() -> None:
    for name, schema in described().items():
        fact = FACTS[name]
        first, second = schema["anyOf"][:2]
        values = [first["minimum"], first["maximum"]] if isinstance(fact, NumberFact) else first["enum"]
        if isinstance(fact, ChoiceFact):
            assert second["items"]["enum"] == first["enum"]
        for value in values:
            assert read_json({section_of(fact): {name: value}}).errors == ()
