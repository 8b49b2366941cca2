"""Kits side by side, revisions, and what moved: always only what differs."""

from __future__ import annotations

import re
from html import unescape

import pytest
from fastapi import FastAPI
from fastapi.testclient import TestClient

from app.facts.answers import number
from app.facts.span import Span
from app.web.site import Site
from tests.report.bikes import bike, report_on
from tests.web.saved_builds import OLDER, draft, older_checker, revised
from tests.web.shown_builds import demo_bike

FITS, CARES = demo_bike("fit"), demo_bike("care")
WIDE = "hardtail-148-xd"  # no axle set of the older catalogue is made for it


def shown(client: TestClient, path: str) -> str:
    response = client.get(path)
    assert response.status_code == 200
    return unescape(response.text)


def rows(page: str) -> list[str]:
    return re.findall(r"<tr>.*?</tr>", page.partition("<tbody>")[2], re.DOTALL)


def test_at_most_four_kits_stand_side_by_side_the_best_first(client: TestClient, app: FastAPI) -> None:
    page = shown(client, f"/builds/{revised(app, bike(FITS))}/compare")
    kits = [kit.hub.name for kit in report_on(FITS).kits[:4]]

    assert re.findall(r'<th scope="col">(\w+)</th>', page) == kits


def test_only_rows_that_differ_are_shown_until_all_are_asked_for(client: TestClient, app: FastAPI) -> None:
    code = revised(app, bike(FITS))

    differing, every = (
        shown(client, f"/builds/{code}/compare"),
        shown(client, f"/builds/{code}/compare?rows=all"),
    )

    assert f'<a href="/builds/{code}/compare?rows=all">Show all rows</a>' in differing
    assert f'<a href="/builds/{code}/compare">Show only what differs</a>' in every
    best = report_on(FITS).best
    assert best
    assert len(rows(every)) == 1 + 7 + len(best.findings)
    assert 0 < len(rows(differing)) < len(rows(every))
    assert f"{len(rows(every)) - len(rows(differing))} are the same" in differing


def test_each_cell_keeps_the_name_of_its_kit_for_a_narrow_page(client: TestClient, app: FastAPI) -> None:
    page = shown(client, f"/builds/{revised(app, bike(FITS))}/compare")

    for row in rows(page):
        assert re.findall(r'<td data-label="(\w+)">', row) == [
            kit.hub.name for kit in report_on(FITS).kits[:4]
        ]


def test_what_the_best_kit_says_is_what_its_report_says(client: TestClient, app: FastAPI) -> None:
    page = shown(client, f"/builds/{revised(app, bike(FITS))}/compare?rows=all")
    best = report_on(FITS).best
    assert best

    for row, finding in zip(rows(page)[8:], best.findings, strict=True):
        assert finding.title in row
        assert f"{finding.words}</span></span> {finding.sentence}</td>" in row.partition("</td>")[0] + "</td>"


def test_a_new_catalogue_moves_findings_and_the_verdict(client: TestClient, app: FastAPI) -> None:
    code = revised(app, bike(WIDE), checker=older_checker())

    page = shown(client, f"/builds/{code}/moved")

    assert f"The catalogue changed since this check (revision {OLDER}, now " in page
    assert '<th scope="col">Revision A</th><th scope="col">Judged now</th>' in page
    assert "<caption>Facts</caption>" not in page
    verdict = page.partition("<caption>Verdict</caption>")[2].partition("</table>")[0]
    assert verdict.index("Doesn't fit") < verdict.index(report_on(WIDE).verdict)
    assert 'href="/rules/dropout_width"' in page


def test_without_a_revision_nothing_has_moved(client: TestClient, app: FastAPI) -> None:
    code = draft(app, bike(FITS))

    response = client.get(f"/builds/{code}/moved")

    assert response.status_code == 303
    assert response.headers["location"] == f"/builds/{code}"


def test_revisions_are_listed_latest_first_with_who_and_when(client: TestClient, app: FastAPI) -> None:
    code = revised(app, bike(FITS), issued_by="Sam")
    revised(app, bike(CARES), code, issued_by="Kim")

    page = shown(client, f"/builds/{code}/revisions")

    assert [re.findall(r">Revision (\w)</a>", row) for row in rows(page)] == [["B"], ["A"]]
    assert "Kim" in rows(page)[0]
    assert "Fits with care" in rows(page)[0]
    assert "Sam" in rows(page)[1]
    assert re.search(r'<td data-label="Saved">\d{1,2} [A-Z][a-z]+ \d{4}, \d\d:\d\d</td>', page)
    assert report_on(FITS).catalogue_revision in page


def test_a_build_without_revisions_says_how_to_save_one(client: TestClient, app: FastAPI) -> None:
    page = shown(client, f"/builds/{draft(app, bike(FITS))}/revisions")

    assert "Press Ctrl+Enter on the counter sheet to save one." in page


def test_a_revision_shows_only_what_differs_from_the_one_before(client: TestClient, app: FastAPI) -> None:
    answers = bike(FITS)
    code = revised(app, answers)
    revised(app, answers.with_(number("dropout_width_mm", Span(120_000, 120_600), "120.3")), code)

    page = shown(client, f"/builds/{code}/revisions/2")

    facts = page.partition("<caption>Facts</caption>")[2].partition("</table>")[0]
    assert re.findall(r'<th scope="row">(.*?)</th>', facts) == ["A7 Dropout width"]
    assert "120.3, read as 120.3\u202fmm ± 0.3" in facts
    assert "<caption>Verdict</caption>" in page
    assert "<caption>Findings</caption>" in page
    assert page.index("Doesn't fit") < page.index("What differs")


def test_the_same_bike_twice_differs_in_nothing(client: TestClient, app: FastAPI) -> None:
    code = revised(app, bike(FITS))
    revised(app, bike(FITS), code)

    assert "Nothing differs." in shown(client, f"/builds/{code}/revisions/2")


def test_the_first_revision_has_none_before_it(client: TestClient, app: FastAPI) -> None:
    code = revised(app, bike(FITS))

    assert "This is the first revision" in shown(client, f"/builds/{code}/revisions/1")


@pytest.mark.parametrize(
    ("number_", "status_code"), [("2", 404), ("0", 422), ("9999999999999999999999", 422), ("one", 422)]
)
def test_a_revision_that_isnt_there_is_no_page(
    number_: str, status_code: int, client: TestClient, app: FastAPI
) -> None:
    code = revised(app, bike(FITS))

    assert client.get(f"/builds/{code}/revisions/{number_}").status_code == status_code
    assert client.get(f"/builds/{code}/sheet", params={"revision": number_}).status_code == status_code


def test_a_shop_without_kits_cannot_judge_a_draft(client: TestClient, app: FastAPI) -> None:
    code = draft(app, bike(FITS))
    site: Site = app.state.site
    object.__setattr__(site, "checker", None)

    for path in ("", "/compare"):
        response = client.get(f"/builds/{code}{path}")
        assert response.status_code == 404
        assert "This shop hasn't set up its kits yet." in unescape(response.text)
