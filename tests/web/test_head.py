"""HEAD is answered wherever GET is, with the same headers and no body."""

from __future__ import annotations

from collections.abc import Iterator

import pytest
from fastapi.routing import iter_route_contexts
from fastapi.testclient import TestClient

from app.web.app import create_app
from app.web.settings import Settings

# Compression would make two pages with different form ids differ in length.
PLAIN = {"Accept-Encoding": "identity"}


def addresses() -> Iterator[str]:
    """Every address that takes GET and has no name to fill in, some static files, and what isn't there."""
    app = create_app(Settings())
    for route in iter_route_contexts(app.routes):
        if "GET" in (route.methods or ()) and "{" not in str(route.path):
            yield str(route.path)
    yield app.state.site.static.address("axlewright.css")
    yield app.state.site.static.address("vendor/htmx-4.0.1.min.js")
    yield "/nowhere"
    yield "/api/v1/nowhere"


@pytest.mark.parametrize("address", list(addresses()))
def test_head_is_get_without_the_body(address: str, client: TestClient) -> None:
    head = client.head(address, headers=PLAIN)
    get = client.get(address, headers=PLAIN)

    assert head.status_code == get.status_code
    assert dict(head.headers) == dict(get.headers)
    assert head.content == b""
    assert get.content or get.is_redirect


def test_a_method_that_is_not_served_is_told_of_head(client: TestClient) -> None:
    response = client.delete("/")

    assert response.status_code == 405
    assert response.headers["Allow"] == "GET, HEAD"
