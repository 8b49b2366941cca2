"""What is said when a request fails: a page to a browser, a problem to a program."""

from __future__ import annotations

import re
from html import unescape
from typing import Annotated

import pytest
from fastapi import FastAPI, HTTPException, Query, Request
from fastapi.testclient import TestClient
from pydantic import BaseModel

from app.store.codes import CodeError
from app.store.errors import FormReusedError, StoreError, UnknownBuildError
from app.web.app import create_app
from app.web.settings import Settings
from tests.web.conftest import ADDRESS, FROM_OUR_PAGE


class Bike(BaseModel):
    dropout_width_mm: float


@pytest.fixture
def app(settings: Settings) -> FastAPI:
    app = create_app(settings)

    @app.get("/raise/{status_code}")
    @app.get("/api/raise/{status_code}")
    async def refuse(status_code: int, detail: str | None = None) -> None:
        raise HTTPException(status_code, detail, headers={"Retry-After": "45"})

    @app.get("/crash")
    @app.get("/api/crash")
    async def crash(request: Request, saved_until: str = "") -> None:
        request.state.saved_until = saved_until
        raise RuntimeError("broken on purpose")

    @app.post("/api/bikes")
    async def bikes(bike: Bike) -> float:
        return bike.dropout_width_mm

    @app.get("/number")
    @app.get("/api/number")
    async def number(number: Annotated[int, Query()]) -> int:
        return number

    @app.get("/store/{kind}")
    async def store(kind: str) -> None:
        raise {
            "code": CodeError("check"),
            "unknown": UnknownBuildError("7Q4K-2M9Y"),
            "reused": FormReusedError(),
            "broken": StoreError("The disk is full."),
        }[kind]

    @app.post("/body")
    async def body(request: Request) -> int:
        return len(await request.body())

    return app


@pytest.fixture
def browser(app: FastAPI) -> TestClient:
    return TestClient(app, base_url=ADDRESS, headers=FROM_OUR_PAGE, raise_server_exceptions=False)


def heading(page: str) -> str:
    found = re.search(r"<h1>(.*?)</h1>", page)
    assert found
    return found[1].replace("&#39;", "'")


@pytest.mark.parametrize(
    ("status_code", "says", "and_then"),
    [
        (400, "We couldn't read what was sent", "send it again"),
        (403, "You can't do this with your role", "Ask the owner to let you publish parts."),
        (404, "This page isn't here", "Check the address, or open a check by its code."),
        (409, "Two people changed the same thing", "choose one"),
        (413, "This file is too big", "The most is 2 MB."),
        (415, "We can't read this kind of file", "UTF-8"),
        (422, "There is a problem", "can't be read"),
        (429, "Too many tries", "Wait 45 seconds, then try again."),
        (503, "We're saving nothing right now", "You can read and print."),
        (418, "This didn't work", "ask the shop"),
    ],
)
def test_each_failure_has_its_words(status_code: int, says: str, and_then: str, browser: TestClient) -> None:
    response = browser.get(f"/raise/{status_code}")

    assert response.status_code == status_code
    assert heading(response.text) == says
    assert (
        f"<title>{response.text.split('<h1>')[1].split('</h1>')[0]} – Alder Lock Cycles</title>"
        in response.text
    )
    assert and_then in response.text.replace("&#39;", "'")


def test_a_reason_of_its_own_replaces_the_body(browser: TestClient) -> None:
    response = browser.get("/raise/404", params={"detail": "We have no check with the code 7Q4K-2M9Y."})

    assert heading(response.text) == "This page isn't here"
    assert "We have no check with the code 7Q4K-2M9Y." in response.text


def test_a_page_that_isnt_there_offers_to_open_a_check_by_its_code(browser: TestClient) -> None:
    response = browser.get("/nowhere")

    assert 'action="/builds/open"' in response.text
    assert '<label class="field__label" for="code">' in response.text


def test_a_crash_shows_a_reference_and_tells_it_to_the_log(app: FastAPI, browser: TestClient) -> None:
    response = browser.get("/crash")
    reference = re.search(r"note reference ([0-9A-F]{4}) and ask the shop", response.text)

    assert response.status_code == 500
    assert heading(response.text) == "Something broke on our side"
    assert reference
    assert "broken on purpose" not in response.text

    with pytest.raises(RuntimeError) as raised:
        TestClient(app, base_url=ADDRESS).get("/crash")
    assert re.fullmatch(r"Reference [0-9A-F]{4}: GET '/crash'", raised.value.__notes__[0])


def test_a_crash_says_up_to_when_answers_are_saved_where_that_is_known(browser: TestClient) -> None:
    response = browser.get("/crash", params={"saved_until": "10:42"})

    assert "Your answers are saved up to 10:42. Try again" in response.text


@pytest.mark.parametrize(
    ("kind", "status_code", "sentence"),
    [
        ("code", 404, "One character of this code is wrong."),
        ("unknown", 404, "We have no check with the code 7Q4K-2M9Y."),
        ("reused", 409, str(FormReusedError())),
        ("broken", 503, "The disk is full."),
    ],
)
def test_what_the_store_says_is_passed_on(
    kind: str, status_code: int, sentence: str, browser: TestClient
) -> None:
    response = browser.get(f"/store/{kind}")

    assert response.status_code == status_code
    assert sentence in unescape(response.text)


def test_a_body_that_says_it_is_too_big_is_refused_before_it_is_read(browser: TestClient) -> None:
    response = browser.post("/body", content=b"x" * 3_400_000)

    assert response.status_code == 413
    assert "The most is 2 MB. Yours is 3.4 MB." in response.text


def test_a_body_that_grows_too_big_is_refused_when_it_does(browser: TestClient) -> None:
    pieces = (b"x" * 100_000 for _ in range(30))

    response = browser.post("/body", content=pieces)

    assert response.status_code == 413
    assert heading(response.text) == "This file is too big"
    assert "The most is 2 MB." in response.text


def test_a_body_of_the_largest_size_is_read(browser: TestClient) -> None:
    assert browser.post("/body", content=b"x" * 2_000_000).json() == 2_000_000


@pytest.mark.parametrize(
    ("status_code", "title"), [(404, "Not Found"), (409, "Conflict"), (503, "Service Unavailable")]
)
def test_the_api_answers_with_problem_details(status_code: int, title: str, browser: TestClient) -> None:
    response = browser.get(f"/api/raise/{status_code}", params={"detail": "Why it failed."})

    assert response.status_code == status_code
    assert response.headers["Content-Type"] == "application/problem+json; charset=utf-8"
    assert response.json() == {
        "type": "about:blank",
        "title": title,
        "status": status_code,
        "detail": "Why it failed.",
    }


def test_a_crash_of_the_api_carries_its_reference_apart(browser: TestClient) -> None:
    problem = browser.get("/api/crash").json()

    assert problem["title"] == "Internal Server Error"
    assert problem["reference"] in problem["detail"]


@pytest.mark.parametrize(
    ("body", "pointer"),
    [
        ("{}", "#/dropout_width_mm"),
        ('{"dropout_width_mm": "wide"}', "#/dropout_width_mm"),
        ('{"dropout_width_mm": ', "#"),
        ("[]", "#"),
    ],
)
def test_what_the_api_cant_read_is_pointed_at(body: str, pointer: str, browser: TestClient) -> None:
    response = browser.post("/api/bikes", content=body, headers={"Content-Type": "application/json"})

    assert response.status_code == 422
    assert response.json()["errors"][0]["pointer"] == pointer
    assert response.json()["errors"][0]["message"]


def test_a_value_that_json_cant_hold_is_refused_like_any_other(browser: TestClient) -> None:
    response = browser.post(
        "/api/bikes", content='{"dropout_width_mm": [NaN]}', headers={"Content-Type": "application/json"}
    )

    assert response.status_code == 422


def test_an_address_that_cant_be_read_is_told_apart_for_page_and_api(browser: TestClient) -> None:
    page = browser.get("/number", params={"number": "many"})
    problem = browser.get("/api/number", params={"number": "many"})

    assert heading(page.text) == "There is a problem"
    assert problem.json()["errors"][0]["parameter"] == "number"
