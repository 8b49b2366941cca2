"""Worked cases of a rule: read by the rule book's pages and by the tests alike.

A case names only the facts and the part values that matter to it; the rest of a part is that of a plain one.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from app.catalogue.catalogue import KINDS, Catalogue
from app.catalogue.part import Part
from app.catalogue.yaml_text import read_yaml
from app.facts.answers import Answers
from app.facts.json_reader import read_json
from app.rules.outcome import Outcome, Weight
from app.rules.rule import PART_KINDS, Rule

_OF_KIND = {model.kind: model for model in KINDS.values() if hasattr(model, "kind")}
_BY_EARL = {outcome.earl: outcome for outcome in Outcome}


@dataclass(frozen=True, slots=True)
class Case:
    """One example of a rule. `on_the_limit` marks the value that is exactly the limit."""

    title: str
    outcome: Outcome
    weight: Weight | None
    on_the_limit: bool
    answers: Answers
    parts: tuple[Part, ...]
    stock: Catalogue


class CaseError(ValueError):
    """A case that can't be read: names the rule, the case and what is wrong."""


def read_plain_parts(text: str) -> dict[str, dict[str, Any]]:
    """The plain part of each kind, as its fields are written in a catalogue."""
    return {kind: dict(fields) for kind, fields in dict(_content("plain_parts", text)).items()}


def _content(name: str, text: str) -> Any:  # noqa: ANN401 - lists, dicts and texts, as the file has them
    content, faults = read_yaml(name, text)
    if faults:
        raise CaseError(str(faults[0]))
    return content


def _part(plain: Mapping[str, dict[str, Any]], kind: str, changes: Mapping[str, Any]) -> Part:
    fields = {**plain[kind], **changes}
    return _OF_KIND[kind].model_validate(
        {name: value for name, value in fields.items() if value != "not given"}
    )


def _stock(
    plain: Mapping[str, dict[str, Any]], wanted: Mapping[str, Sequence[Mapping[str, Any]]]
) -> Catalogue:
    """A catalogue of the listed parts: `rims: [{holes: 36}]`, each a plain part with changes."""
    made = {
        plural: tuple(_part(plain, model.kind, changes) for changes in wanted.get(plural, ()))  # type: ignore[attr-defined]
        for plural, model in KINDS.items()
    }
    return Catalogue(**made)  # type: ignore[arg-type]


def _case(rule: Rule, plain: Mapping[str, dict[str, Any]], row: Mapping[str, Any]) -> Case:
    title = row.get("title", "a case without a title")
    reading = read_json({"bike": row.get("bike", {}), "wish": row.get("wish", {})})
    if reading.errors:
        message = f"{rule.id}, {title}: {reading.errors[0].message}"
        raise CaseError(message)
    known = {"title", "outcome", "weight", "on_the_limit", "bike", "wish", "stock", *PART_KINDS}
    if strange := set(row) - known:
        message = f"{rule.id}, {title}: {', '.join(sorted(strange))} is not a part of a case"
        raise CaseError(message)
    return Case(
        title,
        _BY_EARL[row["outcome"]],
        Weight(row["weight"]) if "weight" in row else None,
        row.get("on_the_limit") == "yes",
        reading.answers,
        tuple(_part(plain, kind, row.get(kind, {})) for kind in rule.part_kinds),
        _stock(plain, row.get("stock", {})),
    )


def read_cases(rule: Rule, text: str, plain: Mapping[str, dict[str, Any]]) -> tuple[Case, ...]:
    """All cases of a rule, in order. Errors: CaseError for a fact, a part value or a word that can't be."""
    return tuple(_case(rule, plain, row) for row in _content(rule.id, text))
