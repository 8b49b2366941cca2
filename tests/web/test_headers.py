"""Security headers stand on every answer, whatever it is an answer to."""

from __future__ import annotations

from collections.abc import Callable

import pytest
from fastapi import FastAPI
from fastapi.testclient import TestClient
from httpx2 import Response

from app.web.app import create_app
from app.web.settings import Settings
from app.web.site import Site
from tests.web.conftest import ADDRESS

POLICY = (
    "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self'; font-src 'self'; "
    "connect-src 'self'; form-action 'self'; base-uri 'none'; frame-ancestors 'none'; object-src 'none'"
)

Ask = Callable[[TestClient, Site], Response]

ANSWERS: dict[str, Ask] = {
    "a page": lambda client, _site: client.get("/"),
    "a page that isn't there": lambda client, _site: client.get("/nowhere"),
    "a static file": lambda client, site: client.get(site.static.address("axlewright.css")),
    "a font": lambda client, site: client.get(
        site.static.address("fonts/atkinson-hyperlegible-next-latin.woff2")
    ),
    "a static file that isn't there": lambda client, _site: client.get("/static/axlewright.css"),
    "the description of the API": lambda client, _site: client.get("/openapi.json"),
    "an address of the API that isn't there": lambda client, _site: client.get("/api/v1/nowhere"),
    "a method that the page can't do": lambda client, _site: client.delete("/"),
    "a post from another site": lambda client, _site: client.post(
        "/", headers={"Sec-Fetch-Site": "cross-site"}
    ),
    "a host name that isn't ours": lambda client, _site: client.get("/", headers={"Host": "other.example"}),
    "a body that is too big": lambda client, _site: client.post("/", content=b"x" * 2_000_001),
    "a crash": lambda client, _site: client.get("/crash"),
    "HEAD": lambda client, _site: client.head("/"),
}  # fmt: skip


@pytest.fixture
def client(app: FastAPI) -> TestClient:
    @app.get("/crash")
    async def crash() -> None:
        raise RuntimeError("broken on purpose")

    return TestClient(app, base_url=ADDRESS, raise_server_exceptions=False)


@pytest.mark.parametrize("ask", ANSWERS.values(), ids=ANSWERS)
def test_every_answer_carries_the_policy_and_its_companions(
    ask: Ask, client: TestClient, app: FastAPI
) -> None:
    response = ask(client, app.state.site)

    assert response.headers["Content-Security-Policy"] == POLICY
    assert response.headers["X-Content-Type-Options"] == "nosniff"
    assert response.headers["Referrer-Policy"] == "same-origin"
    assert "Strict-Transport-Security" not in response.headers


@pytest.mark.parametrize("ask", ANSWERS.values(), ids=ANSWERS)
def test_every_text_says_its_charset(ask: Ask, client: TestClient, app: FastAPI) -> None:
    response = ask(client, app.state.site)

    is_binary = response.headers["Content-Type"] == "font/woff2"
    assert is_binary or response.headers["Content-Type"].endswith("; charset=utf-8")


def test_nothing_but_static_files_is_kept_by_a_browser(client: TestClient, app: FastAPI) -> None:
    static = client.get(app.state.site.static.address("icon.svg"))

    assert client.get("/").headers["Cache-Control"] == "no-store"
    assert static.headers["Cache-Control"] == "public, max-age=31536000, immutable"


def test_a_shop_on_the_web_asks_browsers_to_stay_with_tls() -> None:
    app = create_app(Settings(public_address="https://check.example.org"))

    response = TestClient(app, base_url=ADDRESS).get("/")

    assert response.headers["Strict-Transport-Security"] == "max-age=31536000"


def test_a_request_that_came_over_tls_says_so_too(app: FastAPI) -> None:
    response = TestClient(app, base_url="https://127.0.0.1:8000").get("/")

    assert response.headers["Strict-Transport-Security"] == "max-age=31536000"


def test_a_page_is_compressed_for_a_browser_that_takes_it_so(client: TestClient) -> None:
    compressed = client.get("/")
    plain = client.get("/", headers={"Accept-Encoding": "identity"})

    assert compressed.headers["Content-Encoding"] == "gzip"
    assert "Content-Encoding" not in plain.headers
    assert compressed.text == plain.text
