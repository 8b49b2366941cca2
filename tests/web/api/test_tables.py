"""What a program reads once and keeps is complete, and is sent again only when it changed."""

from __future__ import annotations

from pathlib import Path

import pytest
from fastapi.testclient import TestClient

from app.catalogue.catalogue import KINDS
from app.facts.json_reader import read_json
from app.facts.table import FACTS
from app.rules.register import REGISTER
from app.web.app import create_app
from app.web.settings import Settings
from tests.demo import demo_catalogue
from tests.web.conftest import ADDRESS

TABLES = ["/api/v1/facts", "/api/v1/rules", "/api/v1/catalogue"]


def test_every_fact_stands_in_the_table_in_its_order(program: TestClient) -> None:
    facts = program.get("/api/v1/facts").json()["facts"]

    assert [fact["name"] for fact in facts] == list(FACTS)


def test_a_number_stands_with_its_unit_its_range_and_its_tools(program: TestClient) -> None:
    facts = {fact["name"]: fact for fact in program.get("/api/v1/facts").json()["facts"]}

    width = facts["dropout_width_mm"]
    assert (width["kind"], width["section"], width["label"], width["unit"]) == (
        "number",
        "bike",
        "Dropout width",
        "mm",
    )
    assert width["can_be"] == {"low": 80, "high": 220}
    assert width["tools"][0] == {"name": "calipers", "plus_minus": 0.3, "best": 0.05}
    assert facts["rim_holes"]["whole"]
    assert facts["ambient_c"]["section"] == "wish"


def test_the_ends_of_the_table_and_each_of_its_words_are_taken_by_a_check(program: TestClient) -> None:
    for fact in program.get("/api/v1/facts").json()["facts"]:
        values = (
            fact["can_be"].values() if fact["kind"] == "number" else [each["word"] for each in fact["words"]]
        )
        for value in values:
            assert read_json({fact["section"]: {fact["name"]: value}}).errors == ()


def test_every_rule_stands_in_the_book_with_the_facts_that_settle_it(program: TestClient) -> None:
    book = program.get("/api/v1/rules").json()

    assert [rule["id"] for rule in book["rules"]] == [rule.id for rule in REGISTER]
    assert all(rule["title"] and rule["expects"] and rule["source"] for rule in book["rules"])
    assert {fact for rule in book["rules"] for fact in rule["settled_by"]} <= set(FACTS)


def test_the_book_has_the_revision_that_reports_name(program: TestClient) -> None:
    report = program.post("/api/v1/checks", json={}).json()

    assert program.get("/api/v1/rules").json()["rules_revision"] == report["rules_revision"]
    assert program.get("/api/v1/catalogue").json()["revision"] == report["catalogue_revision"]


def test_all_parts_stand_under_their_kind_with_null_for_what_isnt_given(program: TestClient) -> None:
    parts = program.get("/api/v1/catalogue").json()

    for plural in KINDS:
        assert [part["id"] for part in parts[plural]] == [part.id for part in demo_catalogue().parts(plural)]
    weir = next(hub for hub in parts["hubs"] if hub["id"] == "weir")
    assert weir["spoke_holes"] == 36
    assert "laced_into" in weir


def test_a_shop_without_kits_has_no_parts_but_all_its_rules(tmp_path: Path) -> None:
    (tmp_path / "catalogue").mkdir()
    app = create_app(Settings(data_folder=tmp_path, catalogue_folder=tmp_path / "catalogue"))

    with TestClient(app, base_url=ADDRESS) as program:
        parts, book = program.get("/api/v1/catalogue").json(), program.get("/api/v1/rules").json()

    assert parts["hubs"] == []
    assert len(book["rules"]) == len(REGISTER)


@pytest.mark.parametrize("address", TABLES)
@pytest.mark.parametrize("sent", ["{tag}", '"other", {tag}', "*", "{strong}"])
def test_what_a_program_has_already_is_not_sent_again(address: str, sent: str, program: TestClient) -> None:
    tag = program.get(address).headers["ETag"]

    response = program.get(
        address, headers={"If-None-Match": sent.format(tag=tag, strong=tag.removeprefix("W/"))}
    )

    assert (response.status_code, response.content) == (304, b"")
    assert response.headers["ETag"] == tag
    assert response.headers["Cache-Control"] == "no-cache"


@pytest.mark.parametrize("address", TABLES)
def test_what_has_changed_is_sent(address: str, program: TestClient) -> None:
    response = program.get(address, headers={"If-None-Match": 'W/"of another day"'})

    assert response.status_code == 200
    assert response.json()
