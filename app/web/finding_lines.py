"""Findings as HTML, the same on the result and on the sheet. Lines are kept: most come back at every bike.

A line that is new is filled into a cast of its macro: a macro call would cost more than all the rest of it.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import lru_cache
from types import MappingProxyType
from typing import Any, TypeAlias

from jinja2 import Environment
from markupsafe import Markup, escape

from app.report.report import Finding

# Anchor, rule, state, words, title, source: what of a finding is the same from bike to bike.
Kind: TypeAlias = tuple[str, str, str, str, str, str]

MOST_LINES = 8192
NO_FIGURES: Mapping[str, Markup] = MappingProxyType({})
_HOLE = Markup("\ue000hole\ue001")


@dataclass(frozen=True, slots=True)
class _Item:
    """What the macro is told of a finding."""

    rule_id: str
    state: str
    words: str
    title: str
    limit_source: str
    sentence: str
    remedy: str


def finding_lines(
    templates: Environment,
    findings: Sequence[Finding],
    *,
    with_anchors: bool,
    figures: Mapping[str, Markup] = NO_FIGURES,
) -> Markup:
    """These findings, one after the other. An anchor is the rule's id, and may stand only once on a page.

    figures   by the rule's id, what is drawn behind its finding
    """
    lines = []
    for each in findings:
        anchor = each.rule_id if with_anchors else ""
        kind = (anchor, each.rule_id, each.state, each.words, each.title, each.source)
        lines.append(_line(templates, kind, each.sentence, each.remedy))
        lines.append(figures.get(each.rule_id, ""))
    return Markup("".join(lines))  # noqa: S704 - every value in it was escaped


@lru_cache(maxsize=MOST_LINES)
def _line(templates: Environment, kind: Kind, sentence: str, remedy: str) -> str:
    if remedy:
        return _cast(templates, kind, has_remedy=True) % (escape(sentence), escape(remedy))
    return _cast(templates, kind, has_remedy=False) % escape(sentence)


@lru_cache(maxsize=MOST_LINES)
def _cast(templates: Environment, kind: Kind, *, has_remedy: bool) -> str:
    """The HTML of a finding with a hole for its sentence, and one for its remedy if it has one."""
    module: Any = templates.get_template("components/finding.html").module
    anchor, rule_id, state, words, title, source = kind
    item = _Item(rule_id, state, words, title, source, _HOLE, _HOLE if has_remedy else "")
    html = str(module.finding(item, anchor))
    return html.replace("%", "%%").replace(_HOLE, "%s")


@dataclass(frozen=True, slots=True)
class Sorted:
    """The findings of a kit: those that stand unfolded, the worst first; what passed; what doesn't apply."""

    open: list[Finding]
    passed: list[Finding]
    skipped: list[Finding]


def worst_first(findings: Sequence[Finding]) -> Sorted:
    """What stops a fit, what may still stop it, what needs care, what may; else in the rule book's order."""
    stops: list[Finding] = []
    may_stop: list[Finding] = []
    cares: list[Finding] = []
    may_care: list[Finding] = []
    passed: list[Finding] = []
    skipped: list[Finding] = []
    of_state = {"fit": passed, "skip": skipped, "no": stops, "care": cares}
    for finding in findings:
        unsettled = may_stop if finding.weight == "B" else may_care
        of_state.get(finding.state, unsettled).append(finding)
    return Sorted([*stops, *may_stop, *cares, *may_care], passed, skipped)
