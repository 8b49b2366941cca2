"""Without a script the sheet is a plain form: "Check" keeps and judges it, "Save" freezes a revision too."""

from __future__ import annotations

import re

from fastapi import FastAPI
from fastapi.testclient import TestClient
from sqlmodel import col, func, select

from app.store.tables import Build
from tests.web.counter_sheet import AS_SCRIPT, code_of, hidden, kept, row, save

BIKE = {"frame_material": "steel", "dropout_width_mm": "135.4", "rear_brake": "disc"}


def number_of_builds(app: FastAPI) -> int:
    """How many builds the store has."""
    with app.state.store.reading() as session:
        count: int = session.exec(select(func.count(col(Build.id)))).one()
        return count


def test_save_keeps_the_sheet_and_freezes_a_revision(client: TestClient, app: FastAPI) -> None:
    response = save(client, {**BIKE, "issued_by": "Sam", "form_id": "f1"})

    record = kept(app, code_of(response))
    assert response.status_code == 303
    assert record.latest
    assert record.latest.letter == "A"
    assert record.latest.issued_by == "Sam"
    assert record.latest.facts == record.facts
    assert record.latest.report["verdict"] == "Not settled yet"
    assert record.latest.catalogue_revision == app.state.site.catalogue.revision


def test_check_judges_and_keeps_the_sheet_but_freezes_nothing(client: TestClient, app: FastAPI) -> None:
    response = save(client, {**BIKE, "form_id": "f1"}, action="check")

    record = kept(app, code_of(response))
    assert response.status_code == 303
    assert set(record.facts) == set(BIKE)
    assert record.revisions == ()
    assert "Not settled yet" in client.get(response.headers["location"]).text


def test_a_sheet_that_is_sent_twice_is_saved_once(client: TestClient, app: FastAPI) -> None:
    first = save(client, {**BIKE, "form_id": "f1"})
    again = save(client, {**BIKE, "form_id": "f1"})

    assert code_of(again) == code_of(first)
    assert len(kept(app, code_of(first)).revisions) == 1
    assert number_of_builds(app) == 1


def test_a_sheet_that_was_sent_before_with_other_answers_comes_back_filled(client: TestClient) -> None:
    save(client, {**BIKE, "form_id": "f1"})

    response = save(client, {**BIKE, "smallest_cog": "11", "form_id": "f1"})

    assert response.status_code == 422
    assert "This sheet was sent before with other answers." in response.text
    assert 'value="11"' in row(response.text, "smallest_cog")


def test_an_empty_sheet_is_not_saved(client: TestClient, app: FastAPI) -> None:
    saved, checked = save(client, {}), save(client, {}, action="check")

    assert saved.status_code == 422
    assert "Nothing is answered yet. Answer one fact, then save." in saved.text
    assert checked.status_code == 303
    assert checked.headers["location"] == "/counter"
    assert number_of_builds(app) == 0


def test_what_cannot_be_read_comes_back_with_its_text_and_its_error(client: TestClient, app: FastAPI) -> None:
    response = save(client, {**BIKE, "dropout_width_mm": "wide", "job": "Job 118"})

    html = response.text
    message = "Dropout width must be a number, like 135 or 134.6"
    assert response.status_code == 422
    assert "<title>Error: Counter sheet" in html
    assert f'<a href="#dropout_width_mm">{message}</a>' in html
    assert message in row(html, "dropout_width_mm")
    assert 'value="wide"' in row(html, "dropout_width_mm")
    assert 'aria-invalid="true"' in row(html, "dropout_width_mm")
    assert re.search(r'value="disc"[^>]* checked', row(html, "rear_brake"))
    assert 'value="Job 118"' in html
    assert number_of_builds(app) == 0


def test_two_facts_that_cannot_both_be_are_both_linked(client: TestClient) -> None:
    response = save(client, {"rear_brake": "coaster", "rotor_diameter_mm": "160"})

    summary = response.text.partition("<h1>")[0]
    assert response.status_code == 422
    assert '<a href="#rear_brake">A coaster brake and a disc brake' in summary
    assert '<a href="#rotor_diameter_mm">Or change B5, Rotor diameter</a>' in summary


def test_a_name_that_is_too_long_comes_back_with_its_error(client: TestClient) -> None:
    response = save(client, {**BIKE, "issued_by": "x" * 61})

    html = response.text
    assert response.status_code == 422
    assert html.count("Issued by must be 60 characters at most. You typed 61.") == 2


def test_the_button_beside_a_fact_answers_not_known(client: TestClient, app: FastAPI) -> None:
    response = client.post("/counter", data={**BIKE, "not_known": "dropout_width_mm"})

    code = code_of(response)
    assert response.headers["location"].endswith("#dropout_width_mm")
    assert kept(app, code).facts["dropout_width_mm"] == {"typed": "?"}
    assert kept(app, code).revisions == ()


def test_undo_puts_back_what_is_stored(client: TestClient, app: FastAPI) -> None:
    code = code_of(save(client, BIKE))

    changed = {**BIKE, "dropout_width_mm": "wide", "undo": "dropout_width_mm"}
    response = client.post(f"/builds/{code}/counter", data=changed)

    assert response.status_code == 303
    assert kept(app, code).facts["dropout_width_mm"] == {"typed": "135.4", "low": 135100, "high": 135700}


def test_undo_of_a_choice_that_was_never_made_leaves_it_open(client: TestClient, app: FastAPI) -> None:
    response = client.post("/counter", data={"smallest_cog": "11", "rear_brake": "rim", "undo": "rear_brake"})

    assert set(kept(app, code_of(response)).facts) == {"smallest_cog"}


def test_a_sheet_changes_only_what_was_changed_on_it(client: TestClient, app: FastAPI) -> None:
    code = code_of(save(client, BIKE))
    page = client.get(f"/builds/{code}/counter").text
    client.post(f"/builds/{code}/facts/rear_brake", data={"rear_brake": "rim"}, headers=AS_SCRIPT)

    sheet = {
        **BIKE,
        "dropout_width_mm__tool": "calipers",
        "smallest_cog": "11",
        "shown": hidden(page, "shown"),
    }
    save(client, sheet, f"/builds/{code}/counter")

    facts = kept(app, code).facts
    assert facts["rear_brake"] == {"typed": "rim", "words": ["rim"]}
    assert facts["smallest_cog"] == {"typed": "11", "low": 11000, "high": 11000}


def test_a_number_that_is_emptied_on_the_sheet_is_no_longer_an_answer(
    client: TestClient, app: FastAPI
) -> None:
    code = code_of(save(client, BIKE))
    page = client.get(f"/builds/{code}/counter").text

    save(client, {**BIKE, "dropout_width_mm": "", "shown": hidden(page, "shown")}, f"/builds/{code}/counter")

    assert set(kept(app, code).facts) == {"frame_material", "rear_brake"}


def test_each_save_is_a_revision_of_its_own(client: TestClient, app: FastAPI) -> None:
    code = code_of(save(client, {**BIKE, "form_id": "f1"}))

    save(client, {**BIKE, "smallest_cog": "11", "form_id": "f2"}, f"/builds/{code}/counter")

    assert [each.letter for each in kept(app, code).revisions] == ["A", "B"]
    assert "smallest_cog" not in str(kept(app, code).revisions[0])


def test_a_script_that_saves_the_sheet_is_told_the_revision(client: TestClient) -> None:
    response = client.post("/counter", data={**BIKE, "action": "save"}, headers=AS_SCRIPT)

    assert response.status_code == 200
    assert response.json()["revision"] == "A"
    assert response.json()["said"].endswith("as revision A")


def test_a_script_is_told_how_many_entries_stand_in_the_way(client: TestClient) -> None:
    sheet = {"dropout_width_mm": "wide", "smallest_cog": "many", "action": "save"}

    response = client.post("/counter", data=sheet, headers=AS_SCRIPT)

    assert response.status_code == 422
    assert response.json()["detail"] == "Not saved. 2 entries need a change first."


def test_a_draft_is_frozen_as_it_is_stored(client: TestClient, app: FastAPI) -> None:
    code = code_of(save(client, BIKE, action="check"))

    response = client.post(f"/builds/{code}/revisions", data={"issued_by": "Sam", "form_id": "r1"})

    record = kept(app, code)
    assert response.status_code == 303
    assert response.headers["location"] == f"/builds/{code}/counter"
    assert record.latest
    assert record.latest.issued_by == "Sam"


def test_a_draft_with_two_facts_that_cannot_both_be_is_not_frozen(client: TestClient, app: FastAPI) -> None:
    code = code_of(save(client, {"rear_brake": "coaster"}, action="check"))
    client.post(
        f"/builds/{code}/facts/rotor_diameter_mm", data={"rotor_diameter_mm": "160"}, headers=AS_SCRIPT
    )

    response = client.post(f"/builds/{code}/revisions", data={"form_id": "r1"})

    assert response.status_code == 422
    assert kept(app, code).revisions == ()
