"""The front door: where a check begins, where a saved one is opened, and which kits there are."""

from __future__ import annotations

from dataclasses import replace

import pytest
from fastapi import FastAPI
from fastapi.testclient import TestClient

from app.catalogue.catalogue import Catalogue
from app.store import builds
from app.store.codes import EXAMPLE
from app.web.front_door import FrontDoorPage
from app.web.kits import Kit, kits_of
from app.web.privacy import PrivacyPage
from app.web.site import Site
from tests.demo import demo_catalogue


def test_the_front_door_says_what_this_is_for(client: TestClient) -> None:
    page = client.get("/").text

    assert "<title>Does the kit fit your bike? – Alder Lock Cycles</title>" in page
    assert "<h1>Does the kit fit your bike?</h1>" in page
    assert "Answer what you can. We tell you what is left to measure." in page
    assert '<a class="button button--main" href="/counter">Start a check</a>' in page


def test_a_saved_check_is_opened_by_its_code(client: TestClient) -> None:
    page = client.get("/").text

    assert '<form class="code-form" action="/builds/open" method="get">' in page
    assert 'name="code"' in page


def test_a_shop_without_a_catalogue_says_so(app: FastAPI) -> None:
    site: Site = app.state.site

    page = site.render(FrontDoorPage(kits=(), whose=""))

    assert (
        "This shop hasn&#39;t set up its kits yet." in page or "This shop hasn't set up its kits yet." in page
    )


def test_each_kit_is_told_in_three_lines(app: FastAPI) -> None:
    site: Site = app.state.site
    kit = Kit("Weir 36", "Direct drive, 36 spokes", ("135 quick release", "142 × 12"), "For hills.")

    page = site.render(FrontDoorPage(kits=(kit,), whose="Invented."))

    assert '<h3 class="kit__name">Weir 36</h3>' in page
    assert "For 135 quick release, 142 × 12" in page
    assert "Invented." in page


def test_a_wrong_code_comes_back_with_what_is_wrong(app: FastAPI) -> None:
    site: Site = app.state.site
    wrong = "One character of this code is wrong. I, L, O, U, 0 and 1 are never used."

    page = site.render(FrontDoorPage(kits=(), whose="", typed_code="7q4k <2m9x", code_error=wrong))

    assert "<title>Error: Does the kit fit your bike? – Alder Lock Cycles</title>" in page
    assert f'<a href="#code">{wrong}</a>' in page
    assert 'value="7q4k &lt;2m9x"' in page
    assert 'aria-describedby="code-hint code-error"' in page


@pytest.mark.parametrize("typed", ["{code}", "{code} ", "{lower}", "{bare}"])
def test_a_code_is_opened_however_it_is_typed(typed: str, client: TestClient, app: FastAPI) -> None:
    code = builds.save_draft(app.state.store, None, "form-1", {})

    response = client.get(
        "/builds/open",
        params={"code": typed.format(code=code, lower=code.lower(), bare=code.replace("-", ""))},
    )

    assert response.status_code == 303
    assert response.headers["Location"] == f"/builds/{code}"


@pytest.mark.parametrize(
    ("typed", "status_code", "error"),
    [
        (EXAMPLE, 404, f"We have no check with the code {EXAMPLE}. Check the last four characters."),
        ("7Q4K-2M9X", 422, "One character of this code is wrong. I, L, O, U, 0 and 1 are never used."),
        ("7Q4K", 422, f"A code has eight characters, like {EXAMPLE}."),
        ("", 422, f"A code has eight characters, like {EXAMPLE}."),
    ],
)
def test_a_code_that_opens_nothing_is_shown_again(
    typed: str, status_code: int, error: str, client: TestClient
) -> None:
    response = client.get("/builds/open", params={"code": typed})

    assert response.status_code == status_code
    assert f'<a href="#code">{error}</a>' in response.text
    assert f'value="{typed}"' in response.text


def test_a_page_of_text_for_a_code_comes_back_short(client: TestClient) -> None:
    response = client.get("/builds/open", params={"code": "7" * 5000})

    assert response.status_code == 422
    assert f'value="{"7" * 20}"' in response.text


def test_the_demo_kits_are_on_the_front_door(client: TestClient) -> None:
    page = client.get("/").text

    assert all(hub.name in page for hub in demo_catalogue().hubs)
    assert "Invented for demonstration" in page


def test_a_kit_names_its_rear_ends_as_the_trade_does() -> None:
    weir = next(kit for kit in kits_of(demo_catalogue()) if kit.name == "Weir")

    assert weir.motor == "Direct drive, 36 spokes"
    assert {"135 QR", "135 bolt-on", "142 × 12"} <= set(weir.rear_ends)


def test_what_is_kept_is_said_in_full(client: TestClient) -> None:
    assert "<h1>What we keep</h1>" in client.get("/privacy").text


def test_every_page_ends_with_the_title_block_and_the_way_to_the_shop(client: TestClient) -> None:
    foot = client.get("/").text.partition("<footer")[2]

    assert foot.index("title-block") < foot.index("Ask the shop")


def test_the_title_block_names_the_catalogue_in_force(app: FastAPI) -> None:
    site: Site = app.state.site
    catalogue = Catalogue((), (), (), (), (), (), (), (), revision="3f9c01ab77de")

    before = replace(site, catalogue=None).render(PrivacyPage())
    after = replace(site, catalogue=catalogue).render(PrivacyPage())

    assert '<dt>Catalogue</dt><dd class="code">none yet</dd>' in before
    assert '<dt>Catalogue</dt><dd class="code">3f9c01ab77de</dd>' in after
