"""A change is made only for a request that one of our own pages sent, under a name that is ours."""

from __future__ import annotations

import pytest
from fastapi import FastAPI, Request
from fastapi.testclient import TestClient

from app.web.app import create_app
from app.web.settings import Settings
from tests.web.conftest import ADDRESS

JSON = {"Content-Type": "application/json"}


@pytest.fixture
def app(settings: Settings) -> FastAPI:
    app = create_app(settings)

    @app.api_route("/change", methods=["GET", "POST", "PUT", "PATCH", "DELETE"])
    @app.api_route("/api/v1/change", methods=["GET", "POST", "PUT", "PATCH", "DELETE"])
    async def change(request: Request) -> str:
        return request.method

    return app


@pytest.fixture
def stranger(app: FastAPI) -> TestClient:
    """A program that says nothing about where its requests come from."""
    return TestClient(app, base_url=ADDRESS)


@pytest.mark.parametrize("method", ["POST", "PUT", "PATCH", "DELETE"])
@pytest.mark.parametrize(
    "sent",
    [
        pytest.param({"Sec-Fetch-Site": "same-origin"}, id="the browser says it is ours"),
        pytest.param({"Sec-Fetch-Site": "same-origin", "Origin": ADDRESS}, id="and so does the origin"),
        pytest.param({"Origin": ADDRESS}, id="an older browser names our origin"),
        pytest.param({"Sec-Fetch-Site": "none", "Origin": ADDRESS}, id="the person began it, on our page"),
    ],
)
def test_a_change_from_our_own_page_is_made(method: str, sent: dict[str, str], stranger: TestClient) -> None:
    response = stranger.request(method, "/change", headers=sent)

    assert response.json() == method


@pytest.mark.parametrize("method", ["POST", "PUT", "PATCH", "DELETE"])
@pytest.mark.parametrize(
    "sent",
    [
        pytest.param({}, id="neither header"),
        pytest.param({"Sec-Fetch-Site": "none"}, id="nobody's page"),
        pytest.param({"Sec-Fetch-Site": "cross-site"}, id="another site"),
        pytest.param({"Sec-Fetch-Site": "same-site"}, id="another name of our site"),
        pytest.param({"Sec-Fetch-Site": "cross-site", "Origin": ADDRESS}, id="another site that names us"),
        pytest.param({"Origin": "https://elsewhere.example"}, id="another origin"),
        pytest.param({"Origin": "https://127.0.0.1:8000"}, id="our name with another scheme"),
        pytest.param({"Origin": "http://127.0.0.1:9000"}, id="our name with another port"),
        pytest.param({"Origin": "null"}, id="an origin that is hidden"),
    ],
)
def test_a_change_from_anywhere_else_is_refused(
    method: str, sent: dict[str, str], stranger: TestClient
) -> None:
    response = stranger.request(method, "/change", headers=sent)

    assert response.status_code == 403
    assert "<h1>This was sent from somewhere else</h1>" in response.text


@pytest.mark.parametrize(
    "sent", [{}, {"Sec-Fetch-Site": "cross-site"}, {"Origin": "https://elsewhere.example"}]
)
def test_reading_needs_no_such_proof(sent: dict[str, str], stranger: TestClient) -> None:
    assert stranger.get("/change", headers=sent).json() == "GET"
    assert stranger.head("/change", headers=sent).status_code == 200


@pytest.mark.parametrize("media_type", ["application/json", "application/json; charset=utf-8"])
def test_a_program_without_a_cookie_may_send_json_to_the_api(media_type: str, stranger: TestClient) -> None:
    response = stranger.post("/api/v1/change", content="{}", headers={"Content-Type": media_type})

    assert response.json() == "POST"


@pytest.mark.parametrize(
    ("address", "sent"),
    [
        pytest.param("/api/v1/change", {**JSON, "Cookie": "who=me"}, id="a cookie comes along"),
        pytest.param("/change", JSON, id="JSON to a page"),
    ],
)  # fmt: skip
def test_the_api_is_exempt_for_nothing_else(address: str, sent: dict[str, str], stranger: TestClient) -> None:
    response = stranger.post(address, content="{}", headers=sent)

    assert response.status_code == 403


@pytest.mark.parametrize(
    "sent",
    [
        pytest.param({"Content-Type": "text/plain"}, id="text, as any form can send"),
        pytest.param({"Content-Type": "application/x-www-form-urlencoded"}, id="what programs send unasked"),
        pytest.param({}, id="no type at all"),
    ],
)
def test_the_api_tells_a_program_that_it_takes_json_alone(sent: dict[str, str], stranger: TestClient) -> None:
    response = stranger.post("/api/v1/change", content="{}", headers=sent)

    assert response.status_code == 415
    assert "Content-Type: application/json" in response.json()["detail"]


def test_the_api_says_so_as_a_problem(stranger: TestClient) -> None:
    response = stranger.post("/api/v1/change", content="{}", headers={"Cookie": "who=me"})

    assert response.headers["Content-Type"].startswith("application/problem+json")
    assert response.json()["status"] == 403


def test_the_public_address_is_ours_behind_a_proxy() -> None:
    app = create_app(Settings(public_address="https://check.example.org"))
    proxied = TestClient(
        app, base_url="http://check.example.org", headers={"Origin": "https://check.example.org"}
    )

    assert proxied.post("/nowhere").status_code == 404


@pytest.mark.parametrize(
    "name", ["127.0.0.1:8000", "192.168.1.20", "[::1]:8000", "localhost", "LOCALHOST:8000"]
)
def test_addresses_of_the_machine_itself_are_ours(name: str, stranger: TestClient) -> None:
    assert stranger.get("/", headers={"Host": name}).status_code == 200


@pytest.mark.parametrize("name", ["elsewhere.example", "127.0.0.1.elsewhere.example", "[", ""])
def test_a_name_that_another_site_points_at_this_machine_is_refused(name: str, stranger: TestClient) -> None:
    response = stranger.get("/", headers={"Host": name})

    assert response.status_code == 421
    assert "<h1>This shop has another address</h1>" in response.text
