"""Whatever is sent of any fact: the right sentence, what was typed again, and never a crash."""

from __future__ import annotations

import json
import re
from collections.abc import Iterator, Mapping
from html import unescape

import pytest
from fastapi.testclient import TestClient

from app.facts.fact import ChoiceFact, Fact, NumberFact
from app.facts.reading import lower_label
from app.facts.table import FACTS
from app.web.app import create_app
from app.web.settings import Settings
from tests.facts.bad_entries import BAD, MEGABYTE, WRONG_TYPES, as_json, as_number, begins
from tests.web.conftest import ADDRESS, FROM_OUR_PAGE

SHORT_KINDS = [kind for kind in BAD if kind != "a megabyte"]
AS_SCRIPT = {"Accept": "application/json"}
FORM = {"Content-Type": "application/x-www-form-urlencoded"}
JSON = {"Content-Type": "application/json"}
LONGEST = 200


@pytest.fixture(scope="module")
def shop(tmp_path_factory: pytest.TempPathFactory) -> Iterator[TestClient]:
    """One shop for all of these, since none of them may leave anything behind."""
    app = create_app(Settings(data_folder=tmp_path_factory.mktemp("shop")))
    with TestClient(app, base_url=ADDRESS, headers=FROM_OUR_PAGE, follow_redirects=False) as shop:
        yield shop


def sent_to_api(
    shop: TestClient, values: Mapping[str, object], address: str = "/api/v1/checks"
) -> dict[str, str]:
    """What the API says of each of these facts; json.dumps writes NaN as any careless program does."""
    response = shop.post(address, content=json.dumps(as_json(dict(values))), headers=JSON)
    errors = response.json()["errors"]
    assert response.status_code == 422
    assert all(len(error["value"]) <= LONGEST for error in errors)
    assert len({error["fact"] for error in errors}) == len(errors)
    return {error["fact"]: error["message"] for error in errors}


def typed(kind: str) -> dict[str, str]:
    """A sheet with the same kind of mistake at every fact."""
    return {name: BAD[kind].text(as_number(fact)) for name, fact in FACTS.items()}


def beside(fact: Fact, page: str) -> str:
    """The sentence beside the field of a fact."""
    found = re.search(rf'id="{fact.name}-error">(.*?)</p>', page, re.DOTALL)
    assert found
    return unescape(re.sub(r"<[^>]*>", "", found[1])).removeprefix("Error: ")


def typed_again(fact: Fact, page: str) -> list[str]:
    """What stands in the field of a fact: the text, or the word that is chosen."""
    marked = r'value="([^"]*)"' if isinstance(fact, NumberFact) else r'value="([^"]*)"[^>]*? checked'
    return [unescape(text) for text in re.findall(rf'name="{fact.name}" {marked}', page)]


@pytest.mark.parametrize("kind", SHORT_KINDS)
def test_the_api_names_every_fact_of_a_bad_bike_with_what_is_allowed(kind: str, shop: TestClient) -> None:
    values = {name: BAD[kind].value(as_number(fact)) for name, fact in FACTS.items()}

    messages = sent_to_api(shop, values)

    assert messages.keys() == FACTS.keys()
    for name, fact in FACTS.items():
        wrong_type = isinstance(fact, ChoiceFact) and not isinstance(values[name], str)
        sentence = f"{fact.label} must be one of these, a list of them, or null: "
        assert messages[name].startswith(sentence if wrong_type else begins(fact, BAD[kind]))


@pytest.mark.parametrize("address", ["/api/v1/checks", "/api/v1/builds"])
def test_the_api_takes_an_empty_text_for_no_answer_at_all(address: str, shop: TestClient) -> None:
    messages = sent_to_api(shop, dict.fromkeys(FACTS, ""), address)

    for name, fact in FACTS.items():
        verb = "Enter" if isinstance(fact, NumberFact) else "Select"
        assert messages[name].startswith(f"{verb} the {lower_label(fact)}, or ")


@pytest.mark.parametrize(("value", "shown"), WRONG_TYPES, ids=[shown for _, shown in WRONG_TYPES])
def test_the_api_tells_a_wrong_type_what_is_taken(value: object, shown: str, shop: TestClient) -> None:
    messages = sent_to_api(shop, dict.fromkeys(FACTS, value))

    for name, fact in FACTS.items():
        allowed = "a number, a text like 134..136, null, an object with "
        if isinstance(fact, ChoiceFact):
            allowed = "one of these, a list of them, or null: "
        assert messages[name].startswith(f"{fact.label} must be {allowed}")
        assert messages[name].endswith(f"You sent {shown}.")


@pytest.mark.parametrize("fact", FACTS.values(), ids=lambda fact: fact.name)
def test_the_api_takes_no_megabyte_for_an_answer(fact: Fact, shop: TestClient) -> None:
    messages = sent_to_api(shop, {fact.name: MEGABYTE})

    assert messages == {fact.name: f"{fact.label} must be 200 characters at most. You typed 1048576."}


@pytest.mark.parametrize("kind", SHORT_KINDS)
def test_the_sheet_comes_back_with_the_sentence_beside_each_field_and_its_text_in_it(
    kind: str, shop: TestClient
) -> None:
    sheet = typed(kind)

    response = shop.post("/counter", data={**sheet, "action": "save"})

    assert response.status_code == 422
    assert "<title>Error: " in response.text
    for name, fact in FACTS.items():
        assert beside(fact, response.text).startswith(begins(fact, BAD[kind]))
        assert typed_again(fact, response.text) == [sheet[name]]


@pytest.mark.parametrize("kind", SHORT_KINDS)
def test_every_field_is_told_while_it_is_typed(kind: str, shop: TestClient) -> None:
    response = shop.post("/counter/live", data=typed(kind))

    assert response.status_code == 200
    for fact in FACTS.values():
        assert beside(fact, response.text).startswith(begins(fact, BAD[kind]))


@pytest.mark.parametrize("fact", FACTS.values(), ids=lambda fact: fact.name)
def test_a_field_that_is_left_takes_no_megabyte(fact: Fact, shop: TestClient) -> None:
    response = shop.post(f"/counter/facts/{fact.name}", data={fact.name: MEGABYTE}, headers=AS_SCRIPT)

    assert response.status_code == 422
    assert f"{fact.label} must be 200 characters at most. You typed 1048576." in response.json()["detail"]
    assert len(response.content) < 1000


@pytest.mark.parametrize("name", ["dropout_width_mm", "rear_brake", "job"])
def test_of_a_megabyte_on_the_sheet_two_hundred_characters_come_back(name: str, shop: TestClient) -> None:
    response = shop.post("/counter", data={name: MEGABYTE, "slot_width_mm": "10.2"})

    assert response.status_code == 422
    assert "characters at most. You typed 1048576." in response.text
    assert MEGABYTE[:199] + "…" in response.text
    assert MEGABYTE[:200] not in response.text
    assert 'name="slot_width_mm" value="10.2"' in response.text


def test_empty_fields_are_facts_that_were_not_asked(shop: TestClient) -> None:
    response = shop.post("/counter", data={**dict.fromkeys(FACTS, ""), "rim_holes": "36"})

    assert response.status_code == 303


@pytest.mark.parametrize(
    "body",
    [b"=%ff", b"=%ED%A0%80", b"=%00", b"=%E2%82", b"=1&{name}=2", b"", b"__tool=eye&{name}=135", b"[]=1"],
)
@pytest.mark.parametrize("address", ["/counter", "/counter/live", "/counter/facts/{name}"])
def test_bytes_that_are_no_text_break_no_page(address: str, body: bytes, shop: TestClient) -> None:
    name = "dropout_width_mm"
    sent = (b"{name}" + body).replace(b"{name}", name.encode())

    response = shop.post(address.format(name=name), content=sent, headers=FORM)

    assert response.status_code in {200, 303, 422}


@pytest.mark.parametrize("address", ["/counter", "/counter/live", "/counter/facts/rim_holes"])
def test_a_file_in_place_of_a_text_is_refused(address: str, shop: TestClient) -> None:
    response = shop.post(address, files={"rim_holes": ("holes.txt", b"36")})

    assert response.status_code == 400
    assert "<h1>We couldn" in response.text


@pytest.mark.parametrize("address", ["/counter", "/counter/live", "/counter/facts/rim_holes"])
def test_a_form_with_more_fields_than_any_sheet_is_refused(address: str, shop: TestClient) -> None:
    response = shop.post(address, content=b"&".join([b"rim_holes=36"] * 401), headers=FORM)

    assert response.status_code == 400
