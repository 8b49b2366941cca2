"""The counter sheet shows every fact once: as typed, how it was read and what it does to the verdict."""

from __future__ import annotations

import re

import pytest
from fastapi import FastAPI
from fastapi.testclient import TestClient

from app.facts.table import FACTS
from app.web.app import create_app
from app.web.settings import Settings
from tests.web.conftest import ADDRESS, FROM_OUR_PAGE
from tests.web.counter_sheet import code_of, hidden, row, save


def test_the_sheet_holds_every_fact_once_in_the_order_of_the_stand(client: TestClient) -> None:
    html = client.get("/counter").text

    assert re.findall(r'data-row="([a-z_0-9]+)"', html) == ["job", "issued_by", *FACTS]


def test_each_fact_has_its_letter_its_label_and_how_it_is_measured(client: TestClient) -> None:
    width = row(client.get("/counter").text, "dropout_width_mm")

    assert "A7</span>" in width
    assert "Dropout width, mm" in width
    assert FACTS["dropout_width_mm"].how_measured in width
    assert "<option>calipers</option>" in width


def test_before_anything_is_answered_no_fact_is_marked(client: TestClient) -> None:
    html = client.get("/counter").text

    assert not any("data-state" in row(html, name) for name in FACTS)
    assert "kits still standing" in html


def test_what_was_typed_stands_as_it_was_typed_beside_what_it_was_read_as(client: TestClient) -> None:
    code = code_of(save(client, {"dropout_width_mm": "5 5/16 in", "rear_brake": "disc"}))

    html = client.get(f"/builds/{code}/counter").text

    assert 'value="5 5/16 in"' in row(html, "dropout_width_mm")
    assert "134.9\u202fmm ± 0.8" in row(html, "dropout_width_mm")
    assert re.search(r'value="disc"[^>]* checked', row(html, "rear_brake"))


def test_the_tool_that_was_chosen_stays_chosen(client: TestClient) -> None:
    code = code_of(save(client, {"dropout_width_mm": "135", "dropout_width_mm__tool": "rule or tape"}))

    width = row(client.get(f"/builds/{code}/counter").text, "dropout_width_mm")

    assert "<option selected>rule or tape</option>" in width
    assert "135.0\u202fmm ± 1.0" in width


def test_an_unusual_value_is_told_in_the_note(client: TestClient) -> None:
    html = client.post("/counter/live", data={"rotor_diameter_mm": "120", "tyre_width_mm": "37"}).text

    assert "Unusual: mostly 140 to 220\u202fmm." in row(html, "rotor_diameter_mm")
    assert "Unusual" not in row(html, "tyre_width_mm")


def test_a_choice_that_leaves_two_words_open_stays_on_the_sheet(client: TestClient) -> None:
    code = code_of(save(client, {"caliper_mount": "post or flat"}))

    mount = row(client.get(f"/builds/{code}/counter").text, "caliper_mount")

    assert re.search(r'value="post or flat" checked', mount)
    assert "Post mount or Flat mount" in mount


def test_not_known_is_an_answer_and_shows_as_one(client: TestClient) -> None:
    code = code_of(save(client, {"dropout_width_mm": "?", "rear_brake": "?"}))

    html = client.get(f"/builds/{code}/counter").text

    assert "Not known</p>" in row(html, "dropout_width_mm")
    assert re.search(r'value="\?"[^>]* checked', row(html, "rear_brake"))


def test_every_form_carries_an_id_of_its_own(client: TestClient) -> None:
    first, second = (hidden(client.get("/counter").text, "form_id") for _ in range(2))

    assert first != second
    assert len(first) == 32


def test_enter_without_a_script_checks_the_sheet_and_never_presses_the_button_of_a_fact(
    client: TestClient,
) -> None:
    form = client.get("/counter").text.partition('id="counter"')[2]

    first = re.search(r'<button[^>]*type="submit"[^>]*>', form)

    assert first
    assert 'name="action" value="check"' in first[0]


@pytest.mark.parametrize("code", ["7Q4K-2M9Y", "7q4k2m9y"])
def test_an_unknown_code_is_not_found(code: str, client: TestClient) -> None:
    response = client.get(f"/builds/{code}/counter")

    assert response.status_code == 404
    assert "We have no check with the code 7Q4K-2M9Y" in response.text


def test_a_code_opens_its_sheet_however_it_is_typed(client: TestClient) -> None:
    code = code_of(save(client, {"smallest_cog": "11"}))

    opened = client.get("/counter/open", params={"code": code.replace("-", " ").lower()})

    assert opened.status_code == 303
    assert opened.headers["location"] == f"/builds/{code}/counter"


def test_a_code_that_is_none_is_explained_at_the_front_door(client: TestClient) -> None:
    opened = client.get("/counter/open", params={"code": "7Q4K 2M9"})

    assert opened.status_code == 303
    assert "A code has eight characters" in client.get(opened.headers["location"]).text


def test_without_a_catalogue_the_sheet_still_saves(settings: Settings) -> None:
    bare = settings.model_copy(update={"catalogue_folder": settings.data_folder / "none"})
    app: FastAPI = create_app(bare)

    with TestClient(app, base_url=ADDRESS, headers=FROM_OUR_PAGE, follow_redirects=False) as client:
        sheet = client.get("/counter").text
        code = code_of(save(client, {"smallest_cog": "11"}))
        stored = client.get(f"/builds/{code}/counter").text

    assert "Import a catalogue to begin." in sheet
    assert 'value="11"' in row(stored, "smallest_cog")
