"""The rule book: every rule has a page with its words, its sources and four worked cases."""

from __future__ import annotations

import re
from html import unescape

import pytest
from fastapi import FastAPI
from fastapi.testclient import TestClient

from app.facts.table import FACTS
from app.rules.outcome import Weight
from app.rules.register import REGISTER
from app.rules.rule import Rule
from app.web.rule_book import FAMILIES, RuleBook, read_rule_book
from app.web.worked_cases import WorkedCase, read_all_cases, worked_cases
from tests.demo import demo_standards
from tests.web.shown_builds import site

every_rule = pytest.mark.parametrize("rule", REGISTER, ids=lambda rule: rule.id)
BOOK = read_rule_book(site().settings, site().checker)


def page_of(rule: Rule) -> str:
    return unescape(BOOK.page(site(), rule.id).decode())


def test_the_book_lists_every_rule_by_family_with_its_weight(client: TestClient) -> None:
    page = unescape(client.get("/rules").text)

    lines = re.findall(r'<li><a href="/rules/(\w+)">(.*?)</a> <span>(.*?)</span></li>', page)
    assert [(rule_id, title) for rule_id, title, _ in lines] == [(rule.id, rule.title) for rule in REGISTER]
    assert re.findall(r"<h2>(.*?)</h2>", page) == list(
        dict.fromkeys(FAMILIES[rule.family] for rule in REGISTER)
    )
    for rule, (_, _, weight) in zip(REGISTER, lines, strict=True):
        stops = rule.weight is Weight.BLOCKS and not rule.of_wish
        assert (weight == "can stop a fit") is stops


@every_rule
def test_a_rule_says_all_that_it_rests_on(rule: Rule) -> None:
    page = page_of(rule)

    assert f"<h1>{rule.title}</h1>" in page
    for said in (rule.applies, rule.expects, rule.assumes, str(rule.source), rule.id):
        assert said in page
    assert all(limit.source in page for limit in rule.limits)
    assert all(f"{FACTS[name].letter} {FACTS[name].label}" in page for name in rule.settled_by)
    assert (
        f"{rule.version}, not changed since it was written" in page or f"{rule.version}: what it says" in page
    )


@every_rule
def test_a_rule_shows_a_worked_case_of_each_outcome(rule: Rule) -> None:
    page = page_of(rule)

    cases = re.findall(r'<section class="case" data-state="([a-z]+)">(.*?)</section>', page, re.DOTALL)
    fits, fails, unsettled, skipped = [state for state, _ in cases]
    assert fits == "fit"
    assert fails in {"no", "care"}
    assert unsettled in {"close", "open", "gap"}
    assert skipped == "skip"


@every_rule
def test_a_worked_case_says_what_the_rule_says_of_it(rule: Rule) -> None:
    page = page_of(rule)

    for case in worked_cases(rule, read_all_cases(), demo_standards()):
        assert case.sentence in page
        assert case.remedy in page
        assert case.title in page
        assert all(fact in page for fact in case.facts)


def test_of_what_cannot_be_told_a_reading_across_a_limit_is_shown_first() -> None:
    rules = [rule for rule in REGISTER if any(case.state == "close" for case in shown(rule))]

    assert len(rules) > len(REGISTER) // 4
    assert all(shown(rule)[2].state == "close" for rule in rules)


def shown(rule: Rule) -> tuple[WorkedCase, ...]:
    return worked_cases(rule, read_all_cases(), demo_standards())


@pytest.mark.parametrize("path", ["/rules", "/rules/dropout_width"])
def test_a_page_that_is_known_already_is_not_sent_again(path: str, client: TestClient) -> None:
    first = client.get(path)

    again = client.get(path, headers={"If-None-Match": first.headers["etag"]})

    assert first.headers["content-type"] == "text/html; charset=utf-8"
    assert first.headers["cache-control"] == "no-cache"
    assert again.status_code == 304
    assert again.content == b""


def test_a_page_is_made_once(client: TestClient, app: FastAPI) -> None:
    book: RuleBook = app.state.rule_book

    client.get("/rules/dropout_width")
    made = dict(book.pages)
    client.get("/rules/dropout_width")

    assert book.pages == made
    assert all(again is body for again, body in zip(book.pages.values(), made.values(), strict=True))


@pytest.mark.parametrize("name", ["no_such_rule", "dropout_width%00", "D" * 4000])
def test_a_rule_that_is_not_in_the_book_has_no_page(name: str, client: TestClient) -> None:
    response = client.get(f"/rules/{name}")

    assert response.status_code == 404
    assert 'action="/builds/open"' in response.text
