"""The rule book: every rule by family, and a page for each, made from the register and the worked cases."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from itertools import groupby
from typing import Annotated, ClassVar

from fastapi import APIRouter, Depends, HTTPException, Request
from starlette.responses import Response

from app.catalogue.standards import Standards
from app.catalogue.standards_text import load_standards
from app.facts.table import FACTS
from app.report.build import Checker
from app.rules.outcome import Weight
from app.rules.register import BY_ID, REGISTER, RULES_REVISION
from app.rules.rule import Rule
from app.web.api.revalidated import revalidated
from app.web.current import CurrentSite
from app.web.page import Page
from app.web.parts_folder import texts_in
from app.web.settings import Settings
from app.web.site import Site
from app.web.worked_cases import Cases, WorkedCase, read_all_cases, worked_cases

router = APIRouter(include_in_schema=False)

HTML = "text/html"
FAMILIES: Mapping[str, str] = {
    "axle": "Axle and dropouts",
    "brake": "Brake",
    "drivetrain": "Drivetrain",
    "torque_arm": "Torque arm",
    "wheel": "Wheel",
    "sensing": "Sensing",
    "electrics": "Wiring and pack",
    "law_and_load": "Law and load",
}
WEIGHTS: Mapping[Weight, str] = {Weight.BLOCKS: "can stop a fit", Weight.CAUTIONS: "to know"}
OF_WISH = "a wish: it orders what fits"
UNCHANGED = "{version}, not changed since it was written"
CHANGED = "{version}: what it says of some bikes has changed since version 1"
UNKNOWN_RULE = "There is no rule of this name. The rule book lists all rules."


@dataclass(frozen=True, slots=True)
class RuleGroup:
    """The rules of one family."""

    title: str
    rules: tuple[RuleLine, ...]


@dataclass(frozen=True, slots=True)
class RuleLine:
    """One rule in the list."""

    id: str
    title: str
    weight: str


@dataclass(frozen=True)
class RulesPage(Page):
    """All rules, in the order in which a bike is handled."""

    template: ClassVar[str] = "pages/rules.html"

    groups: tuple[RuleGroup, ...]
    revision: str

    heading = "Rule book"


@dataclass(frozen=True)
class RulePage(Page):
    """One rule. `settled_by` are the labels of the facts that move it, `sources` those of its limits."""

    template: ClassVar[str] = "pages/rule.html"

    rule: Rule
    family: str
    weight: str
    version: str
    sources: tuple[str, ...]
    settled_by: tuple[str, ...]
    cases: tuple[WorkedCase, ...]

    @property
    def heading(self) -> str:
        return self.rule.title


@dataclass(frozen=True, slots=True)
class RuleBook:
    """What the pages are made of, read once at start, and the pages that were made already.

    pages  the HTML by catalogue revision and rule, for a page of the book differs in nothing else
    """

    cases: Cases
    standards: Standards
    pages: dict[tuple[str, str], bytes] = field(default_factory=dict)

    def page(self, site: Site, rule_id: str) -> bytes:
        """The HTML of a rule's page, or of the list where no rule is named."""
        key = (site.catalogue.revision if site.catalogue else "", rule_id)
        body = self.pages.get(key)
        if body is None:
            page = self._rule_page(BY_ID[rule_id]) if rule_id else _rules_page(site)
            body = self.pages[key] = site.render(page).encode()
        return body

    def _rule_page(self, rule: Rule) -> RulePage:
        limits = [limit.source for limit in rule.limits if limit.source]
        return RulePage(
            rule=rule,
            family=FAMILIES[rule.family],
            weight=_weight(rule),
            version=(CHANGED if rule.version > 1 else UNCHANGED).format(version=rule.version),
            sources=tuple(dict.fromkeys((str(rule.source), *limits))),
            settled_by=tuple(f"{FACTS[name].letter} {FACTS[name].label}" for name in rule.settled_by),
            cases=worked_cases(rule, self.cases, self.standards),
        )


def read_rule_book(settings: Settings, checker: Checker | None) -> RuleBook:
    """The book with its cases. Raises CaseError for a case that can't be."""
    standards = checker.standards if checker else load_standards(dict(texts_in(settings.standards_folder)))
    return RuleBook(read_all_cases(), standards)


async def current_rule_book(request: Request) -> RuleBook:
    """The rule book of the application that answers this request."""
    book: RuleBook = request.app.state.rule_book
    return book


CurrentRuleBook = Annotated[RuleBook, Depends(current_rule_book)]


@router.get("/rules")
async def rules(request: Request, site: CurrentSite, book: CurrentRuleBook) -> Response:
    """List every rule."""
    return revalidated(request, book.page(site, ""), media_type=HTML)


@router.get("/rules/{rule_id}")
async def rule(rule_id: str, request: Request, site: CurrentSite, book: CurrentRuleBook) -> Response:
    """Show one rule."""
    if rule_id not in BY_ID:
        raise HTTPException(404, UNKNOWN_RULE)
    return revalidated(request, book.page(site, rule_id), media_type=HTML)


def _rules_page(site: Site) -> RulesPage:
    groups = tuple(
        RuleGroup(FAMILIES[family], tuple(RuleLine(each.id, each.title, _weight(each)) for each in found))
        for family, found in groupby(REGISTER, key=lambda each: each.family)
    )
    return RulesPage(groups, site.checker.rules_revision if site.checker else RULES_REVISION)


def _weight(rule: Rule) -> str:
    return OF_WISH if rule.of_wish else WEIGHTS[rule.weight]
