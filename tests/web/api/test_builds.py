"""A program saves a build once, however often it asks; whoever has the code reads what is the bike's."""

from __future__ import annotations

import re

import pytest
from fastapi.testclient import TestClient

from app.store.codes import normalise
from tests.web.api.conftest import demo_bike

BUILDS = "/api/v1/builds"
KEY = "Idempotency-Key"
BIKE = {"bike": {"frame_material": "steel", "dropout_width_mm": {"value": 135.2, "plus_minus": 0.2}}}
NEW_BUILD = {**BIKE, "job": "Blue tourer", "issued_by": "Robin"}


def saved(program: TestClient, key: str, build: object = NEW_BUILD) -> str:
    """The address of a build that was saved under this key."""
    response = program.post(BUILDS, json=build, headers={KEY: key})
    assert response.status_code == 201
    return str(response.headers["Location"])


def test_a_build_is_saved_under_a_code_with_its_verdict(program: TestClient) -> None:
    bike = demo_bike("steel-touring-135-qr")
    judged = program.post("/api/v1/checks", json=bike).json()

    response = program.post(BUILDS, json=bike, headers={KEY: "first"})

    told = response.json()
    assert response.status_code == 201
    assert normalise(told["code"]) == told["code"]
    assert response.headers["Location"] == f"{BUILDS}/{told['code']}"
    assert (told["revision"]["number"], told["revision"]["letter"]) == (1, "A")
    assert told["revision"]["state"] == judged["state"]
    assert told["revision"]["combination"] == judged["combinations"][0]["key"]
    assert told["revision"]["catalogue_revision"] == judged["catalogue_revision"]
    assert told["revision"]["rules_revision"] == judged["rules_revision"]
    assert (told["verdict"], told["sentence"]) == (judged["verdict"], judged["sentence"])


def test_the_same_request_again_is_done_once_and_answered_the_same(program: TestClient) -> None:
    first = program.post(BUILDS, json=NEW_BUILD, headers={KEY: "twice"})
    second = program.post(BUILDS, json=NEW_BUILD, headers={KEY: "twice"})

    assert second.status_code == first.status_code
    assert second.content == first.content
    assert second.headers["Location"] == first.headers["Location"]
    assert len(program.get(first.headers["Location"]).json()["revisions"]) == 1


def test_the_same_facts_in_another_spelling_are_the_same_request(program: TestClient) -> None:
    first = program.post(
        BUILDS, content='{"bike": {"rim_holes": 36, "smallest_cog": 11}}', headers=as_json("spelled")
    )
    second = program.post(
        BUILDS,
        content='{"wish": null, "bike":{"smallest_cog":11.0,"rim_holes":36}}',
        headers=as_json("spelled"),
    )

    assert second.content == first.content


def as_json(key: str) -> dict[str, str]:
    return {KEY: key, "Content-Type": "application/json"}


@pytest.mark.parametrize(
    "other",
    [
        pytest.param({**NEW_BUILD, "bike": {"frame_material": "carbon"}}, id="another bike"),
        pytest.param({**NEW_BUILD, "job": "Red tourer"}, id="another job"),
        pytest.param({**BIKE, "issued_by": "Robin"}, id="no job"),
        pytest.param({**NEW_BUILD, "issued_by": "Sam"}, id="issued by another"),
    ],
)
def test_a_key_that_was_used_for_another_build_is_refused(other: object, program: TestClient) -> None:
    address = saved(program, "taken")
    before = program.get(address).content

    response = program.post(BUILDS, json=other, headers={KEY: "taken"})

    assert response.status_code == 409
    assert response.json()["detail"].startswith("This Idempotency-Key was used for another build before.")
    assert program.get(address).content == before


def test_without_a_key_one_is_made_up_and_told(program: TestClient) -> None:
    first = program.post(BUILDS, json=BIKE)
    other = program.post(BUILDS, json=BIKE)
    repeat = program.post(BUILDS, json=BIKE, headers={KEY: first.headers[KEY]})

    assert first.json()["code"] != other.json()["code"]
    assert repeat.content == first.content


@pytest.mark.parametrize("key", ["", "two words", "k" * 201, "schlüssel"])
def test_a_key_that_is_none_is_refused(key: str, program: TestClient) -> None:
    response = program.post(BUILDS, json=BIKE, headers={KEY.encode(): key.encode()})

    assert response.status_code == 422
    assert response.json()["errors"][0]["parameter"] == KEY
    assert "1 to 200 visible ASCII characters" in response.json()["errors"][0]["message"]


@pytest.mark.parametrize("line", [1, ["Blue"], "x" * 61, "two\nlines", "\u0000"])
@pytest.mark.parametrize("name", ["job", "issued_by"])
def test_a_name_that_is_no_line_is_told_beside_the_facts(
    name: str, line: object, program: TestClient
) -> None:
    response = program.post(BUILDS, json={"bike": {"rim_holes": 999}, name: line})

    of_fact, of_line = response.json()["errors"]
    assert response.status_code == 422
    assert of_fact["fact"] == "rim_holes"
    assert of_line["parameter"] == name
    assert of_line["message"] == f"{name} must be one line of text, 60 characters at most, or null."


def test_nothing_is_saved_of_a_build_that_cant_be_read(program: TestClient) -> None:
    refused = program.post(BUILDS, json={"bike": {"rim_holes": "many"}}, headers={KEY: "refused"})
    mended = program.post(BUILDS, json={"bike": {"rim_holes": 36}}, headers={KEY: "refused"})

    assert (refused.status_code, mended.status_code) == (422, 201)


def test_a_build_is_given_back_as_it_was_sent_and_as_it_was_read(program: TestClient) -> None:
    sent = {
        "bike": {
            "dropout_width_mm": {"value": 135.2, "plus_minus": 0.2, "tool": "calipers"},
            "slot_width_mm": "10..10.4",
            "rear_brake": ["rim", "none"],
            "rim_holes": None,
        },
        "wish": {"total_mass_kg": 110},
    }

    build = program.get(saved(program, "read", sent)).json()

    no_number, no_word = {"low": None, "high": None}, {"words": None}
    assert build["facts"]["bike"] == {
        "dropout_width_mm": {
            "given": "135.2 ± 0.2",
            "tool": "calipers",
            "low": 135,
            "high": 135.4,
            **no_word,
        },
        "slot_width_mm": {"given": "10..10.4", "tool": "", "low": 10, "high": 10.4, **no_word},
        "rear_brake": {"given": "rim, none", "tool": "", **no_number, "words": ["none", "rim"]},
        "rim_holes": {"given": "?", "tool": "", **no_number, **no_word},
    }
    assert list(build["facts"]["wish"]) == ["total_mass_kg"]
    assert build["latest"]["facts"] == build["facts"]


def test_a_build_keeps_the_report_that_it_was_saved_with(program: TestClient) -> None:
    address = saved(program, "kept")

    build = program.get(address).json()

    assert build["latest"]["report"] == program.post("/api/v1/checks", json=BIKE).json()
    assert build["latest"]["revision"] == build["revisions"][-1]


def test_names_of_people_stay_in_the_shop(program: TestClient) -> None:
    posted = program.post(BUILDS, json=NEW_BUILD, headers={KEY: "names"})

    shown = program.get(posted.headers["Location"])

    assert not re.search("Blue tourer|Robin", posted.text + shown.text)


def test_a_code_may_be_written_in_any_case_without_its_hyphen(program: TestClient) -> None:
    address = saved(program, "spelling")
    code = address.rpartition("/")[2]

    response = program.get(f"{BUILDS}/ {code.replace('-', '').lower()}")

    assert response.json()["code"] == code


def test_a_build_is_sent_again_only_when_it_changed(program: TestClient) -> None:
    address = saved(program, "etag")
    first = program.get(address)

    again = program.get(address, headers={"If-None-Match": first.headers["ETag"]})

    assert (again.status_code, again.content) == (304, b"")
    assert first.headers["Cache-Control"] == "private, no-cache"
    assert program.head(address).headers["ETag"] == first.headers["ETag"]


@pytest.mark.parametrize(
    ("code", "detail"),
    [
        ("7Q4K-2M9Y", "We have no check with the code 7Q4K-2M9Y."),
        ("7Q4K-2M9X", "One character of this code is wrong. I, L, O, U, 0 and 1 are never used."),
        ("7Q4", "A code has eight characters, like 7Q4K-2M9Y."),
        ("%ED%A0%80%00", "A code has eight characters, like 7Q4K-2M9Y."),
        ("x" * 5000, "A code has eight characters, like 7Q4K-2M9Y."),
    ],
    ids=["unknown", "a wrong character", "too short", "no text", "far too long"],
)
def test_a_code_that_leads_nowhere_is_told_why(code: str, detail: str, program: TestClient) -> None:
    response = program.get(f"{BUILDS}/{code}")

    assert response.status_code == 404
    assert response.json()["detail"] == detail
