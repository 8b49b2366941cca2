"""What stands in the fields of the counter sheet: each fact as typed, with the tool it was measured with."""

from __future__ import annotations

import json
from collections.abc import Mapping
from dataclasses import dataclass
from typing import TypeAlias

from app.facts.answers import Answer, Answers
from app.facts.fact import ChoiceFact, Fact, NumberFact
from app.facts.form_reader import TOOL_SUFFIX
from app.facts.plain_text import cut
from app.facts.table import FACTS

NOT_KNOWN = "?"


@dataclass(frozen=True, slots=True)
class Written:
    """One field: the typed text, or the word of a choice; and the tool, empty where nothing is typed."""

    typed: str = ""
    tool: str = ""


Sheet: TypeAlias = Mapping[str, Written]
NOTHING = Written()


def written(fact: Fact, typed: str, tool: str = "") -> Written:
    """A field with its tool named, so that leaving the tool at its first choice is no change."""
    if not typed.strip():
        return NOTHING
    if isinstance(fact, NumberFact):
        return Written(cut(typed), cut(tool.strip()) or fact.tools[0].name)
    return Written(cut(typed), cut(tool.strip()) if fact.by_gauge else "")


def posted_sheet(fields: Mapping[str, str]) -> dict[str, Written]:
    """The facts that a form holds. A choice of which nothing is chosen is not in a form at all."""
    return {
        name: written(FACTS[name], fields[name], fields.get(name + TOOL_SUFFIX, ""))
        for name in FACTS
        if name in fields
    }


def stored_sheet(answers: Answers) -> dict[str, Written]:
    """Answers as they were typed; a choice read as one word stands as that word."""
    return {
        name: written(FACTS[name], _typed(FACTS[name], answer), answer.tool)
        for name, answer in answers.items()
    }


def _typed(fact: Fact, answer: Answer) -> str:
    if not isinstance(fact, ChoiceFact):
        return answer.typed
    if answer.words is None:
        return NOT_KNOWN
    return next(iter(answer.words)) if len(answer.words) == 1 else answer.typed


def sheet_to_json(sheet: Sheet) -> str:
    """A sheet as one line of text, for a form to carry what its page showed."""
    return json.dumps({name: [each.typed, each.tool] for name, each in sheet.items()}, separators=(",", ":"))


def sheet_from_json(text: str) -> dict[str, Written]:
    """The sheet that sheet_to_json wrote; an empty one, of which all is new, where the text is none."""
    try:
        return {str(name): Written(str(typed), str(tool)) for name, (typed, tool) in json.loads(text).items()}
    except (ValueError, TypeError, AttributeError, RecursionError):
        return {}
