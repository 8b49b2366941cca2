"""Describes the JSON of a bike and a wish for the API's own description, from the table of facts."""

from __future__ import annotations

from typing import TypeAlias

from app.facts.fact import ChoiceFact, Fact, NumberFact
from app.facts.json_reader import SECTIONS, section_of
from app.facts.plain_text import LONGEST
from app.facts.span import THOUSAND, in_unit, rounded
from app.facts.table import FACTS

Schema: TypeAlias = dict[str, object]


def facts_schema() -> Schema:
    """The JSON schema (draft 2020-12) of what read_json takes: an object with bike and wish."""
    return {
        "title": "Facts",
        "description": "What is known of a bike and of its rider's wish; what is left out is not known.",
        **_object({section: section_schema(section) for section in SECTIONS}),
    }


def section_schema(section: str) -> Schema:
    """The JSON schema of the facts under bike, or under wish."""
    facts = (fact for fact in FACTS.values() if section_of(fact) == section)
    return {"title": section.capitalize(), **_object({fact.name: fact_schema(fact) for fact in facts})}


def fact_schema(fact: Fact) -> Schema:
    """The JSON schema of one fact, with its label, its unit and how it is measured."""
    if isinstance(fact, ChoiceFact):
        examples: list[object] = [fact.words[0].word, [word.word for word in fact.words[:2]], None]
        described, forms = fact.how_measured, _words(fact)
    else:
        examples = _numbers(fact)
        described, forms = (f"In {fact.unit}. " if fact.unit else "") + fact.how_measured, _number(fact)
    return {"title": fact.label, "description": described, "anyOf": forms, "examples": examples}


def _words(fact: ChoiceFact) -> list[Schema]:
    word: Schema = {
        "enum": [word.word for word in fact.words],
        "description": "; ".join(f"{word.word}: {word.label}" for word in fact.words),
    }
    several: Schema = {"type": "array", "items": {"enum": word["enum"]}, "minItems": 1}
    held: Schema = {
        **_object({"word": {"anyOf": [word, several]}, "gauge": {"type": "string", "maxLength": LONGEST}}),
        "required": ["word", "gauge"],
        "description": "The word, and the name printed on the paper gauge that was held.",
    }
    forms: list[Schema] = [
        word,
        {**several, "description": "The words that are still possible."},
        {"type": "null"},
    ]
    return [*forms[:2], held, forms[2]] if fact.by_gauge else forms


def _number(fact: NumberFact) -> list[Schema]:
    kind = "integer" if fact.whole else "number"
    value: Schema = {
        "type": kind,
        "minimum": _json(fact, fact.can_be.low),
        "maximum": _json(fact, fact.can_be.high),
    }
    half: Schema = {"type": kind, "minimum": 0}
    tool: Schema = {
        "enum": [tool.name for tool in fact.tools],
        "description": "; ".join(f"{tool.name}: ± {in_unit(tool.plus_minus):f}" for tool in fact.tools),
    }
    written: Schema = {
        "type": "string",
        "maxLength": LONGEST,
        "description": "As typed on the counter sheet: 134.6 ± 0.2, 134..136, <140, >130 or ?.",
    }
    return [
        {**value, "description": "A reading with the uncertainty of the first tool."},
        {**_object({"value": value, "plus_minus": half, "tool": tool}), "required": ["value"]},
        {**_object({"low": {"type": kind}, "high": {"type": kind}}), "required": ["low", "high"]},
        written,
        {"type": "null"},
    ]


def _numbers(fact: NumberFact) -> list[object]:
    """A number of the usual ones, the same with what it is sure to, and everything up to it."""
    places = 0 if fact.whole else fact.decimals
    middle = _json(fact, int(rounded((fact.usual.low + fact.usual.high) // 2, places, up=False) * THOUSAND))
    tool, low = fact.tools[0], _json(fact, fact.usual.low)
    sure: Schema = {"value": middle, "plus_minus": _json(fact, tool.plus_minus), "tool": tool.name}
    return [middle, sure, {"low": low, "high": middle}, None]


def _json(fact: NumberFact, thousandths: int) -> int | float:
    value = in_unit(thousandths)
    return int(value) if fact.whole or value == value.to_integral_value() else float(value)


def _object(properties: dict[str, Schema]) -> Schema:
    return {"type": "object", "properties": properties, "additionalProperties": False}
