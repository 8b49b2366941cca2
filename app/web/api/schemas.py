"""The schemas of the API's description: what is sent by the table of facts, what is answered by its types."""

from __future__ import annotations

from typing import Any

from pydantic import TypeAdapter

from app.catalogue.catalogue import Catalogue
from app.facts.json_reader import SECTIONS
from app.facts.json_schema import facts_schema, section_schema
from app.facts.span import Span
from app.report.report import Report
from app.web.api.build_record import Frozen, SavedBuild, WholeBuild
from app.web.api.documented import SCHEMAS, Described, ref
from app.web.api.fact_table import FactTable
from app.web.api.order import LONGEST
from app.web.api.rule_book import RuleBook

ANSWERS = (Catalogue, FactTable, Report, RuleBook, SavedBuild, WholeBuild)
LINES = {
    "job": "The shop's own word for the job. It is kept for the shop's pages and never answered here.",
    "issued_by": "Who issues the build; printed on its sheet and never answered here.",
}
FAULT_PLACES = {
    "fact": "The fact that it concerns; empty where it concerns none alone.",
    "also": "The second fact, where two can't both be.",
    "value": "What was sent, as a text, cut to 200 characters.",
    "parameter": "The header, or the name in the JSON, where it is no fact.",
}


def schemas() -> Described:
    """Every schema by the name that it has in the description."""
    return dict(sorted({**_sent(), **_answered(), "Problem": _problem()}.items()))


def _answered() -> Described:
    adapters = [(shape.__name__, "serialization", TypeAdapter(shape)) for shape in ANSWERS]
    _, held = TypeAdapter.json_schemas(adapters, ref_template=SCHEMAS + "{model}")  # type: ignore[arg-type]
    shapes: Described = held["$defs"]
    # A kept report is given back as it was frozen, as plain data without a type of its own.
    shapes[Frozen.__name__]["properties"]["report"] = ref(Report.__name__)
    # A dimension says itself how it is written; the span behind it is never sent.
    del shapes[Span.__name__]
    return shapes


def _sent() -> Described:
    sections = {section: {"anyOf": [ref(section.capitalize()), {"type": "null"}]} for section in SECTIONS}
    lines = {
        name: {"type": ["string", "null"], "maxLength": LONGEST, "description": told}
        for name, told in LINES.items()
    }
    facts = facts_schema()
    return {
        **{section.capitalize(): section_schema(section) for section in SECTIONS},
        "Facts": {**facts, "properties": sections},
        "NewBuild": {
            **facts,
            "title": "NewBuild",
            "description": "The facts of a bike, and what the shop writes beside them.",
            "properties": {**sections, **lines},
        },
    }


def _problem() -> dict[str, Any]:
    texts = {name: {"type": "string", "description": told} for name, told in FAULT_PLACES.items()}
    message = {"type": "string", "description": "What is wrong, and what is allowed."}
    fault = {"type": "object", "properties": {**texts, "message": message}, "required": ["message"]}
    return {
        "title": "Problem",
        "description": "Problem details (RFC 9457).",
        "type": "object",
        "properties": {
            "type": {"type": "string", "description": "about:blank: the status says which kind it is."},
            "title": {"type": "string", "description": "The status in words."},
            "status": {"type": "integer"},
            "detail": {"type": "string", "description": "One or two sentences: what failed, and what to do."},
            "errors": {
                "type": "array",
                "items": fault,
                "description": "Everything that is wrong, one by one.",
            },
            "reference": {"type": "string", "description": "Names a crash in the server's log."},
        },
        "required": ["type", "title", "status", "detail"],
    }
