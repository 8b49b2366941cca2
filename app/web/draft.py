"""The draft of a build: its stored answers, and what a form or a single field changes of them."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from pydantic import JsonValue

from app.facts.answers import Answer, Answers
from app.facts.answers_json import StoredAnswersError, answers_from_json, answers_to_json
from app.facts.contradictions import contradictions
from app.facts.form_reader import TOOL_SUFFIX
from app.facts.reading import FactError, read_answer
from app.facts.table import FACTS
from app.store.records import BuildRecord, RevisionRecord
from app.web.written import NOTHING, Sheet, posted_sheet, stored_sheet

Changes = Mapping[str, JsonValue]


@dataclass(frozen=True)
class Draft:
    """The answers after a change, the change as the store takes it, and what can't stand."""

    answers: Answers
    changes: Changes
    errors: tuple[FactError, ...]


def answers_of(record: BuildRecord | RevisionRecord | None) -> Answers:
    """The stored answers of a build or of a revision; one that no fact is known for is left out."""
    kept = [_answer_of({name: value}) for name, value in record.facts.items()] if record else []
    return Answers().with_(*(answer for each in kept for answer in each.values()))


def _answer_of(one: Mapping[str, object]) -> Answers:
    try:
        return answers_from_json(one)
    except StoredAnswersError:
        return Answers()


def changed(stored: Answers, fields: Mapping[str, str], shown: Sheet) -> Draft:
    """What a sheet changes of a build: what differs both from what its page showed and from what is stored.

    A fact that somebody else has changed since the page was opened is so left alone.
    """
    kept = stored_sheet(stored)
    posted = posted_sheet(fields)
    touched = [
        name for name, now in posted.items() if now not in {shown.get(name, NOTHING), kept.get(name, NOTHING)}
    ]
    emptied = [name for name in touched if posted[name] == NOTHING]
    read = [read_answer(FACTS[name], *_entered(name, fields)) for name in touched if name not in emptied]
    given = [each for each in read if isinstance(each, Answer)]
    answers = stored.without(*emptied).with_(*given)
    errors = tuple(each for each in read if isinstance(each, FactError))
    changes = {**dict.fromkeys(emptied), **stored_form(given)}
    return Draft(answers, changes, (*errors, *contradictions(answers)))


def _entered(name: str, fields: Mapping[str, str]) -> tuple[str, str]:
    return fields[name], fields.get(name + TOOL_SUFFIX, "").strip()


def stored_form(answers: list[Answer]) -> Changes:
    """Answers as the store keeps them."""
    return {**answers_to_json(Answers().with_(*answers))}  # type: ignore[dict-item]


def without_contradictions(answers: Answers, errors: tuple[FactError, ...]) -> Answers:
    """The answers that a bike can be judged by: of two that can't both be, neither is believed."""
    return answers.without(*_contradicting(errors))


def _contradicting(errors: tuple[FactError, ...]) -> Iterator[str]:
    for error in errors:
        if error.also:
            yield error.fact
            yield error.also
