"""Reads the facts of a bike and a wish from JSON that has been parsed already."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import replace

from app.facts.closest import unknown_names
from app.facts.contradictions import contradictions
from app.facts.fact import Fact, Group
from app.facts.json_values import json_text, shown_value
from app.facts.messages import JSON_BODY, JSON_ELSEWHERE, JSON_SECTION, NotReadError
from app.facts.plain_text import cut
from app.facts.reading import FactError, Read, Reading, read_answer, reading_of
from app.facts.table import FACTS

SECTIONS = ("bike", "wish")


def section_of(fact: Fact) -> str:
    """Under which name of the JSON a fact stands."""
    return "wish" if fact.group is Group.WISH else "bike"


def read_json(data: object) -> Reading:
    """The facts in {"bike": {...}, "wish": {...}}; both may be absent. Never raises.

    null says that a fact is not known; an unknown name, a wrong type and an impossible value are errors.
    """
    if not isinstance(data, Mapping):
        typed = cut(shown_value(data))
        return reading_of([FactError("", typed, JSON_BODY.format(typed=typed))], {})
    results: list[Read] = [*unknown_names(map(str, data), SECTIONS)]
    texts: dict[str, str] = {}
    for section in SECTIONS:
        results.extend(_section(section, data.get(section), texts))
    reading = reading_of(results, texts)
    return replace(reading, errors=(*reading.errors, *contradictions(reading.answers)))


def _section(section: str, facts: object, texts: dict[str, str]) -> Iterator[Read]:
    if facts is None:
        return
    if not isinstance(facts, Mapping):
        typed = cut(shown_value(facts))
        yield FactError("", typed, JSON_SECTION.format(section=section, typed=typed))
        return
    here = [fact.name for fact in FACTS.values() if section_of(fact) == section]
    yield from unknown_names((name for name in map(str, facts) if name not in FACTS), here)
    for fact in FACTS.values():
        if fact.name in facts:
            yield _fact(fact, section, facts[fact.name], texts)


def _fact(fact: Fact, section: str, value: object, texts: dict[str, str]) -> Read:
    texts[fact.name] = shown_value(value)
    if section != section_of(fact):
        message = JSON_ELSEWHERE.format(name=fact.name, section=section_of(fact))
        return FactError(fact.name, cut(texts[fact.name]), message)
    try:
        text = json_text(fact, value)
    except NotReadError as fault:
        return FactError(fact.name, cut(texts[fact.name]), str(fault))
    texts[fact.name] = text.typed
    return read_answer(fact, text.typed, text.tool)
