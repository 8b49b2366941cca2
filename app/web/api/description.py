"""The description of the API (OpenAPI 3.1): what routes say of themselves, with schemas and examples."""

from __future__ import annotations

import json
from collections.abc import Iterator, Mapping
from typing import Any

from pydantic import TypeAdapter

from app.facts.json_reader import read_json
from app.facts.json_text import NOT_JSON
from app.report.build import Checker
from app.store.codes import EXAMPLE as CODE
from app.store.errors import UnknownBuildError
from app.web.api import examples
from app.web.api.builds import KEY_REUSED
from app.web.api.checks import NO_KITS
from app.web.api.documented import JSON, Described
from app.web.api.refused import FACTS_UNREAD, faults_of_facts
from app.web.api.schemas import schemas
from app.web.delivery import LARGEST_BODY
from app.web.problem import MEDIA_TYPE as PROBLEM
from app.web.problem import problem
from app.web.trouble import FROM_ELSEWHERE, too_big
from app.web.trouble import NOT_JSON as SEND_JSON

ABOUT = (
    "Tells whether a rear hub-motor kit fits a bike, with which parts, and what to measure next. "
    "A fact is a span: what is left out is not known, and nothing is guessed. "
    "All requests and answers are JSON in UTF-8; HEAD works wherever GET does. "
    "What is refused is answered with problem details (RFC 9457)."
)
SENT: Mapping[str, Any] = {"check_bike": examples.FACTS_SENT, "save_build": examples.BUILD_SENT}
DETAILS: Mapping[str, str] = {
    "400": NOT_JSON.format(line=1, column=12, why="expecting value"),
    "403": FROM_ELSEWHERE.body,
    "404": str(UnknownBuildError(CODE)),
    "409": KEY_REUSED,
    "413": too_big(LARGEST_BODY, LARGEST_BODY * 2).body,
    "415": SEND_JSON.body,
    "422": FACTS_UNREAD,
    "503": NO_KITS,
}


def described(routes: Described, checker: Checker | None) -> Described:
    """What FastAPI tells of the routes, made whole. Without a catalogue no answer has an example."""
    routes["info"]["description"] = ABOUT
    routes["components"] = {"schemas": schemas()}
    answers = _answers(checker) if checker else {}
    for operation in _operations(routes):
        name = operation["operationId"]
        if name in SENT:
            operation["requestBody"]["content"][JSON]["example"] = SENT[name]
        for status, answer in operation["responses"].items():
            content = answer.get("content", {})
            if PROBLEM in content and status in DETAILS:
                content[PROBLEM]["example"] = _problem(status)
            elif JSON in content and name in answers:
                content[JSON]["example"] = answers[name]
    return routes


def _operations(routes: Described) -> Iterator[Described]:
    for path in routes["paths"].values():
        yield from path.values()


def _answers(checker: Checker) -> Mapping[str, Any]:
    report = examples.a_report(checker)
    answers = {
        "check_bike": report,
        "save_build": examples.a_saved_build(report),
        "show_build": examples.a_whole_build(report),
        "list_facts": examples.some_facts(),
        "list_rules": examples.some_rules(checker),
        "list_parts": examples.some_parts(checker.catalogue),
    }
    return {name: _as_json(answer) for name, answer in answers.items()}


def _as_json(answer: object) -> Any:  # noqa: ANN401 - JSON
    return TypeAdapter(type(answer)).dump_python(answer, mode="json")


def _problem(status: str) -> Any:  # noqa: ANN401 - JSON
    faults = faults_of_facts(read_json(examples.UNREAD_SENT).errors) if status == "422" else ()
    return json.loads(bytes(problem(int(status), DETAILS[status], errors=faults).body))
