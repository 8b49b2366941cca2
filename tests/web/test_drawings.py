"""Drawings stand beside what they explain: on the result, on a third page of the sheet, at the counter."""

from __future__ import annotations

import re
from xml.etree import ElementTree as ET

import pytest
from fastapi import FastAPI
from fastapi.testclient import TestClient

from app.drawings.of_kit import AXLE, EXPLAINS
from app.report.build import Checker
from app.web.figures import view_of
from app.web.site import Site
from tests.report.bikes import BIKES, bike, report_on
from tests.web.saved_builds import draft, older_checker, revised
from tests.web.shown_builds import result_of

CLOSE, DISC = "tape-measured-135", "steel-touring-135-qr"
FIGURE = re.compile(r'<figure class="figure">.*?</figure>', re.DOTALL)


def figures(html: str) -> list[str]:
    return FIGURE.findall(html)


def titles(html: str) -> list[str]:
    return re.findall(r"<title id=[^>]*>([^<]*)</title>", html)


def posted(name: str) -> dict[str, str]:
    """A demo bike as it is typed at the counter."""
    return {fact: answer.typed for fact, answer in bike(name).items()}


@pytest.mark.parametrize("view", EXPLAINS)
def test_a_view_of_a_build_has_an_address_of_its_own(client: TestClient, app: FastAPI, view: str) -> None:
    code = revised(app, bike(DISC))

    answer = client.get(f"/builds/{code}/drawings/{view}.svg")

    assert answer.status_code == 200
    assert answer.headers["content-type"] == "image/svg+xml; charset=utf-8"
    assert ET.fromstring(answer.content).attrib["role"] == "img"  # noqa: S314 - our own answer


def test_a_drawing_by_itself_finds_its_styles(client: TestClient, app: FastAPI) -> None:
    code = revised(app, bike(DISC))

    text = client.get(f"/builds/{code}/drawings/axle.svg").text

    sheet = re.search(r'<\?xml-stylesheet type="text/css" href="([^"]+)"\?>', text)
    assert sheet
    assert ".drawing" in client.get(sheet[1]).text


def test_the_scale_of_a_finding_is_found_by_its_rule(client: TestClient, app: FastAPI) -> None:
    code = revised(app, bike(CLOSE))

    answer = client.get(f"/builds/{code}/drawings/dropout_width.svg")

    assert answer.status_code == 200
    assert "Dropout width suits the axle set: the reading over its limits" in answer.text


@pytest.mark.parametrize("name", ["brake_kind", "no_such_rule", "side-view2"])
def test_what_has_no_drawing_is_not_found(client: TestClient, app: FastAPI, name: str) -> None:
    code = revised(app, bike(CLOSE))

    assert client.get(f"/builds/{code}/drawings/{name}.svg").status_code == 404


def test_a_bike_of_which_nothing_is_measured_is_not_drawn(client: TestClient, app: FastAPI) -> None:
    code = draft(app, bike("almost-empty"))

    assert client.get(f"/builds/{code}/drawings/side-view.svg").status_code == 404
    assert 'class="drawing"' not in client.get(f"/builds/{code}").text


def test_a_close_call_shows_its_reading_over_its_limits() -> None:
    page = result_of(CLOSE)

    best = report_on(CLOSE).best
    assert best
    close = [each for each in best.findings if each.state == "close" and each.measured]
    assert close
    for finding in close:
        behind = page.partition(f'id="{finding.rule_id}"')[2].partition("<article")[0]
        assert f"{finding.title}: the reading over its limits" in behind


@pytest.mark.parametrize("name", BIKES)
def test_each_drawing_stands_once_and_every_name_on_a_page_is_its_own(name: str) -> None:
    page = result_of(name)

    found, names = titles(page), re.findall(r'\sid="([^"]+)"', page)
    assert len(found) == len(set(found))
    assert len(names) == len(set(names))


@pytest.mark.parametrize("view", EXPLAINS)
def test_a_view_stands_behind_a_finding_that_it_explains(view: str) -> None:
    page = result_of(DISC)

    before = page.partition(f"/drawings/{view}.svg")[0]
    last = re.findall(r'<article class="finding" data-state="[a-z]+" id="([a-z_]+)"', before)[-1]
    assert last in EXPLAINS[view]


def test_the_link_under_a_view_leads_to_the_same_drawing(client: TestClient, app: FastAPI) -> None:
    code = revised(app, bike(DISC))
    page = client.get(f"/builds/{code}").text

    for figure in figures(page):
        link = re.search(r'href="([^"]+)"', figure)
        if link:
            assert titles(client.get(link[1]).text) == titles(figure)


def test_a_build_judged_anew_links_to_its_drawing_judged_anew(client: TestClient, app: FastAPI) -> None:
    code = revised(app, bike(DISC))

    page = client.get(f"/builds/{code}", params={"judged": "now"}).text

    link = f"/builds/{code}/drawings/side-view.svg?judged=now"
    assert link in page
    assert client.get(link).status_code == 200


def test_what_an_older_catalogue_judged_keeps_its_scales_and_has_no_views(
    client: TestClient, app: FastAPI
) -> None:
    code = revised(app, bike(CLOSE), checker=older_checker())

    page = client.get(f"/builds/{code}").text

    assert "the reading over its limits" in page
    assert "/drawings/axle.svg" not in page
    assert client.get(f"/builds/{code}/drawings/axle.svg?revision=1").status_code == 404


def test_a_sheet_has_its_drawings_on_a_page_more_where_they_are_asked_for(
    client: TestClient, app: FastAPI
) -> None:
    code = revised(app, bike(DISC))
    address = f"/builds/{code}/sheet"

    assert figures(client.get(address).text) == []
    assert len(figures(client.get(f"{address}?drawings=with").text)) == len(EXPLAINS)


def test_a_sheet_says_why_it_has_no_drawings(client: TestClient, app: FastAPI) -> None:
    code = revised(app, bike("almost-empty"))

    page = client.get(f"/builds/{code}/sheet?drawings=with").text

    assert "No drawings: nothing of it has been measured" in page


@pytest.mark.parametrize(
    ("in_hand", "title"),
    [
        ("caliper_bearing_deg", "Rear end from the left, bike facing left"),
        ("rotor_offset_mm", "The axle from locknut to locknut, from behind"),
        ("", "Rear end from the left, bike facing left"),
    ],
)
def test_the_counter_shows_the_place_of_the_fact_in_hand(
    client: TestClient, in_hand: str, title: str
) -> None:
    html = client.post("/counter/live", data={**posted(DISC), "in_hand": in_hand}).text

    assert titles(html) == [title]


def test_the_drawing_at_the_counter_follows_what_is_typed(client: TestClient) -> None:
    typed = posted(DISC)

    before = client.post("/counter/live", data=typed).text
    after = client.post("/counter/live", data={**typed, "caliper_nearest_mm": "60"}).text

    assert "".join(titles(before)) == "".join(titles(after))
    assert before.partition('<svg class="drawing"')[2] != after.partition('<svg class="drawing"')[2]


def test_an_empty_counter_sheet_has_no_drawing(client: TestClient) -> None:
    assert titles(client.get("/counter").text) == []


def test_views_are_drawn_once_for_as_long_as_bike_and_kit_stay(app: FastAPI) -> None:

    site: Site = app.state.site
    checker = site.checker
    assert isinstance(checker, Checker)

    first = view_of(report_on(DISC), bike(DISC), checker, AXLE)

    assert first
    assert view_of(report_on(DISC), bike(DISC), checker, AXLE) is first
