"""The rule book as JSON: every rule with what it asks, what it assumes and where its limits come from."""

from __future__ import annotations

from dataclasses import dataclass

from app.report.build import Checker
from app.rules.check import Limit
from app.rules.register import REGISTER, RULES_REVISION
from app.rules.rule import Rule
from app.web.api.in_unit import Ends, ends_of


@dataclass(frozen=True, slots=True)
class LimitLine:
    """A limit that isn't part data. Where `excluded`, the end itself is no longer allowed."""

    value: Ends
    excluded: bool
    provenance: str
    source: str


@dataclass(frozen=True, slots=True)
class RuleLine:
    """One rule.

    weight      B stops a fit, C is to know
    of_wish     true where it is about what the rider wants, and so never a reason not to fit
    settled_by  the facts that move it
    part_kinds  the kinds of part that it looks at
    """

    id: str
    version: int
    family: str
    title: str
    weight: str
    of_wish: bool
    applies: str
    expects: str
    assumes: str
    source: str
    settled_by: tuple[str, ...]
    part_kinds: tuple[str, ...]
    limits: tuple[LimitLine, ...]


@dataclass(frozen=True, slots=True)
class RuleBook:
    """Every rule, in the order of the book, and the revision that a report names."""

    rules_revision: str
    rules: tuple[RuleLine, ...]


def rule_book(checker: Checker | None) -> RuleBook:
    """The rules that checks are made by; those of this version where there is no catalogue to check."""
    if checker is None:
        return RuleBook(RULES_REVISION, tuple(map(_line, REGISTER)))
    return RuleBook(checker.rules_revision, tuple(map(_line, checker.rules)))


def _line(rule: Rule) -> RuleLine:
    return RuleLine(
        id=rule.id,
        version=rule.version,
        family=rule.family,
        title=rule.title,
        weight=rule.weight.value,
        of_wish=rule.of_wish,
        applies=rule.applies,
        expects=rule.expects,
        assumes=rule.assumes,
        source=str(rule.source),
        settled_by=rule.settled_by,
        part_kinds=rule.part_kinds,
        limits=tuple(map(_limit, rule.limits)),
    )


def _limit(limit: Limit) -> LimitLine:
    return LimitLine(ends_of(limit.value), limit.excluded, limit.provenance.value, limit.source)
