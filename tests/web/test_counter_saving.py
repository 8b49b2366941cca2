"""A field is saved when it is left: the first one makes the build, each later one leaves the others alone."""

from __future__ import annotations

import pytest
from fastapi import FastAPI
from fastapi.testclient import TestClient

from tests.web.counter_sheet import AS_SCRIPT, code_of, kept


def leave(client: TestClient, fact: str, typed: str, code: str = "", form_id: str = "") -> dict[str, str]:
    """Leave a field, as the script of the sheet tells it."""
    address = f"/builds/{code}/facts/{fact}" if code else f"/counter/facts/{fact}"
    response = client.post(
        address, data={fact: typed, "form_id": form_id or f"{fact}-{typed}"}, headers=AS_SCRIPT
    )
    assert response.status_code == 200, response.text
    answer: dict[str, str] = response.json()
    return answer


def test_the_first_field_makes_a_build_and_says_where_it_is(client: TestClient, app: FastAPI) -> None:
    told = leave(client, "dropout_width_mm", "134.6")

    assert told["address"] == f"/builds/{told['code']}/counter"
    assert told["heading"] == f"Counter sheet {told['code']}"
    assert told["said"].startswith("Saved ")
    assert kept(app, told["code"]).facts == {
        "dropout_width_mm": {"typed": "134.6", "low": 134300, "high": 134900}
    }


def test_two_tabs_that_save_different_facts_keep_both(client: TestClient, app: FastAPI) -> None:
    code = leave(client, "dropout_width_mm", "134.6")["code"]

    leave(client, "rear_brake", "disc", code)
    leave(client, "smallest_cog", "11", code)

    assert set(kept(app, code).facts) == {"dropout_width_mm", "rear_brake", "smallest_cog"}


def test_a_field_that_is_sent_twice_is_saved_once(client: TestClient) -> None:
    first = leave(client, "smallest_cog", "11", form_id="a1")
    again = leave(client, "smallest_cog", "11", form_id="a1")

    assert again["code"] == first["code"]


def test_a_field_that_is_emptied_is_no_longer_an_answer(client: TestClient, app: FastAPI) -> None:
    code = leave(client, "smallest_cog", "11")["code"]

    leave(client, "smallest_cog", "", code)

    assert kept(app, code).facts == {}


def test_an_empty_field_makes_no_build(client: TestClient) -> None:
    response = client.post("/counter/facts/rear_brake", data={"rear_brake": ""}, headers=AS_SCRIPT)

    assert response.status_code == 422
    assert response.json()["detail"] == "Not saved. Select the kind of brake, or I don't know"


def test_not_known_is_kept_as_an_answer(client: TestClient, app: FastAPI) -> None:
    code = leave(client, "dropout_width_mm", "?")["code"]

    assert kept(app, code).facts == {"dropout_width_mm": {"typed": "?"}}


def test_a_field_that_cannot_be_read_is_told_why_and_the_stored_answer_stays(
    client: TestClient, app: FastAPI
) -> None:
    code = leave(client, "dropout_width_mm", "134.6")["code"]

    response = client.post(
        f"/builds/{code}/facts/dropout_width_mm", data={"dropout_width_mm": "wide"}, headers=AS_SCRIPT
    )

    message = "Dropout width must be a number, like 135 or 134.6"
    assert response.status_code == 422
    assert response.headers["content-type"] == "application/problem+json; charset=utf-8"
    assert response.json()["errors"] == [{"fact": "dropout_width_mm", "detail": message}]
    assert kept(app, code).facts["dropout_width_mm"] == {"typed": "134.6", "low": 134300, "high": 134900}


def test_a_fact_that_is_not_asked_has_no_place_to_save(client: TestClient) -> None:
    response = client.post("/counter/facts/colour", data={"colour": "red"}, headers=AS_SCRIPT)

    assert response.status_code == 404


def test_a_build_that_is_not_there_is_told_in_one_sentence(client: TestClient) -> None:
    response = client.post(
        "/builds/7Q4K-2M9Y/facts/smallest_cog", data={"smallest_cog": "11"}, headers=AS_SCRIPT
    )

    assert response.status_code == 404
    assert response.json()["detail"].startswith("We have no check with the code 7Q4K-2M9Y")


def test_a_job_number_is_kept_beside_the_facts(client: TestClient, app: FastAPI) -> None:
    code = leave(client, "job", "  Job  118 ")["code"]

    assert kept(app, code).job == "Job 118"
    assert kept(app, code).facts == {}
    assert 'value="Job 118"' in client.get(f"/builds/{code}/counter").text


def test_a_job_number_has_an_end(client: TestClient) -> None:
    response = client.post("/counter/facts/job", data={"job": "x" * 61}, headers=AS_SCRIPT)

    assert response.status_code == 422
    assert response.json()["detail"] == (
        "Not saved. Name or job number must be 60 characters at most. You typed 61."
    )


def test_a_copy_is_a_build_of_its_own_with_the_same_answers(client: TestClient, app: FastAPI) -> None:
    code = leave(client, "smallest_cog", "11")["code"]
    leave(client, "job", "Job 118", code)

    copy = code_of(client.post(f"/builds/{code}/copies", data={"form_id": "c1"}))

    assert copy != code
    assert kept(app, copy).facts == kept(app, code).facts
    assert kept(app, copy).job is None


@pytest.mark.parametrize("address", ["/counter/facts/smallest_cog", "/counter/live", "/counter"])
def test_another_site_can_save_nothing(address: str, client: TestClient) -> None:
    response = client.post(address, data={"smallest_cog": "11"}, headers={"Sec-Fetch-Site": "cross-site"})

    assert response.status_code == 403
