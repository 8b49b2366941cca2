"""A program sends a bike and hears everything that a check tells; what can't be read it hears at once."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import pytest
from fastapi.testclient import TestClient

from app.facts.json_reader import read_json
from app.report.report import report_from_json
from app.web.app import create_app
from app.web.settings import Settings
from tests.web.api.conftest import demo_bike
from tests.web.conftest import ADDRESS

CHECKS = "/api/v1/checks"
JSON = {"Content-Type": "application/json"}


def test_a_bike_is_judged_as_the_shop_itself_judges_it(program: TestClient) -> None:
    bike = demo_bike("steel-touring-135-qr")

    response = program.post(CHECKS, json=bike)

    assert response.status_code == 200
    assert response.headers["Content-Type"] == "application/json; charset=utf-8"
    checker = program.app.state.site.checker  # type: ignore[attr-defined]
    assert report_from_json(response.json()) == checker.report(read_json(bike).answers)


def test_a_bike_of_which_nothing_is_known_is_not_guessed(program: TestClient) -> None:
    response = program.post(CHECKS, json={})

    assert response.json()["verdict"] == "Not settled yet"
    assert response.json()["ask_next"]


def test_null_says_not_known_as_leaving_out_does(program: TestClient) -> None:
    left_out = program.post(CHECKS, json={"bike": {"frame_material": "steel"}})
    nulls = program.post(CHECKS, json={"bike": {"frame_material": "steel", "rim_holes": None}, "wish": None})

    assert left_out.json()["state"] == nulls.json()["state"]
    assert left_out.json()["combinations"] == nulls.json()["combinations"]


def test_all_that_is_wrong_is_told_at_once_with_what_is_allowed(program: TestClient) -> None:
    bike = {"dropout_width_mm": 1346, "frame_material": "cheese", "dropout_widht_mm": 135, "range_km": 40}
    coaster_and_disc = {"rear_brake": "coaster", "rotor_diameter_mm": 160}

    response = program.post(CHECKS, json={"bike": {**bike, **coaster_and_disc}, "wishes": {}})

    assert response.status_code == 422
    assert response.headers["Content-Type"].startswith("application/problem+json")
    assert response.json()["errors"] == [
        {"fact": "", "value": "wishes", "message": "There is no fact called wishes. Did you mean wish?"},
        {
            "fact": "",
            "value": "dropout_widht_mm",
            "message": "There is no fact called dropout_widht_mm. Did you mean dropout_width_mm?",
        },
        {
            "fact": "frame_material",
            "value": "cheese",
            "message": "Frame material must be one of these: steel, aluminium, titanium, carbon, magnesium, "
            "other. You typed cheese.",
        },
        {
            "fact": "dropout_width_mm",
            "value": "1346",
            "message": "Dropout width must be between 80 and 220\u202fmm. "
            "You typed 1346; did you mean 134.6?",
        },
        {"fact": "range_km", "value": "40", "message": "range_km belongs under wish."},
        {
            "fact": "rear_brake",
            "value": "coaster",
            "message": "A coaster brake and a disc brake can't both be at the rear. Change one.",
            "also": "rotor_diameter_mm",
        },
    ]


@pytest.mark.parametrize(
    "number", ["NaN", "Infinity", "-Infinity", "1e999", pytest.param("9" * 4000, id="4,000 digits")]
)
def test_a_number_that_is_none_is_named_by_its_fact(number: str, program: TestClient) -> None:
    response = program.post(
        CHECKS, content=f'{{"bike": {{"dropout_width_mm": {number}, "slot_width_mm": 10}}}}', headers=JSON
    )

    assert response.status_code == 422
    assert [error["fact"] for error in response.json()["errors"]] == ["dropout_width_mm"]


@pytest.mark.parametrize(
    ("body", "detail"),
    [
        (b"", "This isn't JSON: line 1, column 1: expecting value."),
        (b'{"bike":\n {"rim_holes": }}', "This isn't JSON: line 2, column 16: expecting value."),
        (b'{"bike": "\xe9"}', "This isn't UTF-8 text: byte 11 can't be read."),
        (b'{"bike": {}, "bike": {}}', "The name bike stands twice in one object. Keep one."),
        (b'{"bike": {"\\ud800": 1, "\\ud800": 2}}', "The name ? stands twice in one object. Keep one."),
        (b'{"bike": "\\udfff"}', "This JSON holds half a character, such as \\ud800 without its other half."),
        pytest.param(b"[" * 200_000, "This JSON can't be read: it is nested too deeply.", id="200,000 deep"),
        pytest.param(
            b"9" * 5000,
            "This JSON can't be read: a whole number in it has too many digits.",
            id="5,000 digits",
        ),
    ],
)
def test_what_is_no_json_is_told_where_and_why(body: bytes, detail: str, program: TestClient) -> None:
    response = program.post(CHECKS, content=body, headers=JSON)

    assert response.status_code == 400
    assert response.json()["detail"] == detail


@pytest.mark.parametrize("body", ["null", "[]", '"bike"', "1", "true"])
def test_json_that_is_no_object_is_told_what_to_send(body: str, program: TestClient) -> None:
    response = program.post(CHECKS, content=body, headers=JSON)

    assert response.status_code == 422
    assert response.json()["errors"][0]["message"].startswith(
        "Send an object with the facts under bike and wish."
    )


@pytest.mark.parametrize(
    "media_type", ["", "text/plain", "application/x-www-form-urlencoded", "application/json; charset=latin-1"]
)
def test_anything_but_json_is_refused_by_its_type(media_type: str, program: TestClient) -> None:
    response = program.post(CHECKS, content=b"{}", headers={"Content-Type": media_type})

    assert response.status_code == 415
    assert response.json()["detail"] == "Send JSON in UTF-8, with the header Content-Type: application/json."


@pytest.mark.parametrize("media_type", ["Application/JSON", 'application/json; charset="UTF-8"'])
def test_json_may_be_spelled_as_the_standards_allow(media_type: str, program: TestClient) -> None:
    content = json.dumps({"bike": {"rim_holes": 999}}).encode("utf-8-sig")

    response = program.post(CHECKS, content=content, headers={"Content-Type": media_type})

    assert response.status_code == 422


@pytest.mark.parametrize(
    "pieces",
    [pytest.param([b" " * 2_000_001], id="in one piece"), pytest.param([b" " * 900_000] * 3, id="in three")],
)
def test_too_much_is_refused_whether_it_says_so_beforehand_or_not(
    pieces: list[bytes], program: TestClient
) -> None:
    content: Any = pieces[0] if len(pieces) == 1 else iter(pieces)

    response = program.post(CHECKS, content=content, headers=JSON)

    assert response.status_code == 413
    assert response.headers["Content-Type"].startswith("application/problem+json")
    assert response.json()["detail"].startswith("The most is 2 MB.")


def test_another_method_is_told_which_is_taken(program: TestClient) -> None:
    response = program.get(CHECKS)

    assert response.status_code == 405
    assert response.json()["detail"] == "This address takes POST only."


def test_a_shop_without_kits_says_so(tmp_path: Path) -> None:
    (tmp_path / "catalogue").mkdir()
    app = create_app(Settings(data_folder=tmp_path, catalogue_folder=tmp_path / "catalogue"))

    with TestClient(app, base_url=ADDRESS) as program:
        response = program.post(CHECKS, json={})

    assert response.status_code == 503
    assert response.json()["detail"] == "This shop hasn't set up its kits yet."
