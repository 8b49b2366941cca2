"""Findings as HTML, the same on the result and on the sheet: their macro is cast once, then filled."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from functools import cache
from typing import Any

from jinja2 import Environment
from markupsafe import Markup

from app.report.report import Finding
from app.report.wording import WORDS
from app.web.cast import Cast, escaped

# Worst first; what can only caution stands behind what can stop a fit.
_ORDER: Mapping[tuple[str, str], int] = {
    ("failed", "B"): 0, ("cantTell", "B"): 1, ("failed", "C"): 2, ("cantTell", "C"): 3,
}  # fmt: skip
_SETTLED_WELL = len(_ORDER)


@dataclass(frozen=True, slots=True)
class _Item:
    """What the macro is told of a finding."""

    state: str
    words: str
    rule_id: str
    title: str
    sentence: str
    remedy: str
    limit_source: str


@dataclass(frozen=True, slots=True)
class FindingLines:
    """The finding macro cast for every state, with and without a remedy, with and without an anchor."""

    casts: Mapping[tuple[str, bool, bool], Cast]

    def html(self, findings: Sequence[Finding], *, with_anchors: bool) -> Markup:
        """These findings, one after the other. An anchor is the rule's id, which may stand once on a page."""
        rows = [(each.rule_id, each.title, each.sentence, each.remedy, each.source) for each in findings]
        lines = [
            self.casts[each.state, bool(each.remedy), with_anchors].filled(values)
            for each, values in zip(findings, escaped(rows), strict=True)
        ]
        return Markup("".join(lines))  # noqa: S704 - every value in it was escaped


def worst_first(findings: Sequence[Finding]) -> list[Finding]:
    """What stops a fit, what may still stop it, what needs care, the rest; else in the rule book's order."""
    return sorted(findings, key=lambda each: _ORDER.get((each.outcome, each.weight), _SETTLED_WELL))


def concerns_us(finding: Finding) -> bool:
    """Whether a finding is neither passed nor inapplicable: it then stands unfolded, in full."""
    return (finding.outcome, finding.weight) in _ORDER


@cache
def finding_lines(templates: Environment) -> FindingLines:
    """The findings as these templates write them."""
    module: Any = templates.get_template("components/finding.html").module
    return FindingLines(
        {
            (state, remedy, anchor): Cast.of(_macro(module.finding, state, remedy=remedy, anchor=anchor), 5)
            for state in WORDS
            for remedy in (True, False)
            for anchor in (True, False)
        }
    )


def _macro(
    finding: Callable[..., str], state: str, *, remedy: bool, anchor: bool
) -> Callable[[Sequence[Markup]], str]:
    def make(holes: Sequence[Markup]) -> str:
        rule_id, title, sentence, remedied, source = holes
        item = _Item(state, WORDS[state], rule_id, title, sentence, remedied if remedy else "", source)
        return finding(item, rule_id if anchor else "")

    return make
