"""The workshop sheet: what it says, what it rests on, and that nobody builds from a draft."""

from __future__ import annotations

import re
from dataclasses import replace
from html import unescape
from io import BytesIO

import pytest
import segno
from fastapi import FastAPI
from fastapi.testclient import TestClient

from app.facts.answers import number
from app.facts.span import Span
from app.report.report import Finding
from app.store import builds
from app.store.records import Meta
from app.web.qr import qr_code
from app.web.settings import Settings
from app.web.sheet import MOST_IN_FULL
from app.web.site import Site
from tests.report.bikes import BIKES, bike, report_on
from tests.web.saved_builds import FORM_IDS, draft, revised
from tests.web.shown_builds import demo_bike, result_of, sheet_of, words_of

every_bike = pytest.mark.parametrize("name", BIKES)
FITS, CARES = demo_bike("fit"), demo_bike("care")
DRAFT = "DRAFT, NOT FOR BUILDING"


def opened(client: TestClient, code: str, **query: str) -> str:
    response = client.get(f"/builds/{code}/sheet", params=query)
    assert response.status_code == 200
    return unescape(response.text)


def margins_of(client: TestClient, code: str, page: str) -> str:
    address = re.search(rf'<link rel="stylesheet" href="(/builds/{code}/sheet/margins\.css[^"]*)">', page)
    assert address
    response = client.get(unescape(address[1]))
    assert response.headers["content-type"] == "text/css; charset=utf-8"
    return response.text


def findings_of(name: str) -> tuple[Finding, ...]:
    best = report_on(name).best
    assert best
    return best.findings


def is_unsettled_caution(finding: Finding) -> bool:
    return finding.outcome == "cantTell" and finding.weight == "C"


@every_bike
def test_all_that_did_not_pass_is_there_in_full_and_the_rest_by_title(name: str) -> None:
    page = words_of(sheet_of(name))

    points = [each for each in findings_of(name) if each.state not in {"fit", "skip"}]
    for finding in findings_of(name):
        if finding.state == "fit" or (len(points) > MOST_IN_FULL and is_unsettled_caution(finding)):
            assert finding.title in page
        elif finding.state != "skip":
            assert finding.sentence in page
            assert finding.remedy in page


@every_bike
def test_its_sentences_are_those_of_the_result(name: str) -> None:
    result = re.sub(r'(<article class="finding" data-state="[a-z]+") id="[a-z_]+">', r"\1>", result_of(name))

    articles = re.findall(r'<article class="finding".*?</article>', sheet_of(name), re.DOTALL)

    assert all(article in result for article in articles)
    points = [each for each in findings_of(name) if each.state not in {"fit", "skip"}]
    assert all(
        f">{each.title}</span>" in words_of("".join(articles))
        for each in points
        if not is_unsettled_caution(each)
    )


@every_bike
def test_parts_jobs_and_cautions_are_all_on_it(name: str) -> None:
    report, page = report_on(name), words_of(sheet_of(name))

    assert all(part.name in page and f"{part.quantity} ×" in page for part in report.parts_to_pull)
    assert all(caution in page for caution in report.cautions)
    assert all(job.text in page and job.torque in page and job.tool in page for job in report.jobs)


@every_bike
def test_what_is_not_settled_or_does_not_fit_is_a_draft(name: str) -> None:
    settled = report_on(name).state in {"fit", "care"}

    page = sheet_of(name)

    assert (f'<p class="sheet__warning">{DRAFT}</p>' in page) is not settled
    assert ("<dt>Built by</dt>" in page) is settled
    assert ("<h2>Open points</h2>" in page) is not settled


def test_every_page_of_a_draft_says_so_and_which_build_it_is(client: TestClient, app: FastAPI) -> None:
    code = revised(app, bike(demo_bike("no")))

    margins = margins_of(client, code, opened(client, code))

    assert f'@top-center {{ content: "{DRAFT}"; }}' in margins
    assert f'@bottom-left {{ content: "{code}, revision A"; font-size: 8pt; }}' in margins


def test_things_to_know_that_are_too_many_for_two_pages_are_named() -> None:
    page = words_of(sheet_of("almost-empty"))
    unsettled = [each for each in findings_of("almost-empty") if is_unsettled_caution(each)]

    assert f"<strong>{len(unsettled)} things to know aren't settled:</strong>" in page
    assert page.index("things to know aren't settled:") < page.index("Parts to pull")


def test_what_has_no_revision_yet_is_a_draft_even_where_it_fits(client: TestClient, app: FastAPI) -> None:
    code = draft(app, bike(FITS))

    page = opened(client, code)

    assert f'<p class="sheet__warning">{DRAFT}</p>' in page
    assert "no revision yet" in margins_of(client, code, page)


def test_on_a_draft_the_open_points_come_first() -> None:
    page = sheet_of(demo_bike("open"))

    assert page.index("Open points") < page.index("Parts to pull") < page.index("Jobs, in working order")


def test_an_older_revision_says_by_which_it_is_superseded(client: TestClient, app: FastAPI) -> None:
    answers = bike(FITS)
    code = revised(app, answers)
    revised(app, answers.with_(number("dropout_width_mm", Span(135_700, 136_300), "136.0")), code)

    old, new = opened(client, code, revision="1"), opened(client, code)

    assert '<p class="sheet__warning">SUPERSEDED BY REVISION B</p>' in old
    assert "SUPERSEDED BY REVISION B" in margins_of(client, code, old)
    assert "SUPERSEDED" not in new + margins_of(client, code, new)
    assert "136.0\u202fmm ± 0.3" in new
    assert "136.0\u202fmm ± 0.3" not in old


def test_an_older_draft_says_both(client: TestClient, app: FastAPI) -> None:
    code = revised(app, bike(demo_bike("close")))
    revised(app, bike(FITS), code)

    assert f"{DRAFT}. SUPERSEDED BY REVISION B" in opened(client, code, revision="1")


def test_the_title_block_says_whose_sheet_it_is(client: TestClient, app: FastAPI) -> None:
    code = revised(app, bike(CARES), issued_by="Sam at the bench")
    builds.save_draft(app.state.store, code, next(FORM_IDS), {}, Meta("Job 4711"))
    report = report_on(CARES)

    block = opened(client, code).partition('<div class="sheet__head">')[2].partition("</dl>")[0]

    for said in (
        "<h1>Workshop sheet</h1>", "Alder Lock Cycles", code, ">A<", "1 of 2", "Sam at the bench", "Job 4711",
        f"1 ({report.catalogue_revision})", report.rules_revision,
    ):  # fmt: skip
        assert said in block


def test_bike_and_kit_are_told_in_a_line_each() -> None:
    page = words_of(sheet_of(CARES))
    best = report_on(CARES).best
    assert best

    assert re.search(r"<dt>Bike</dt><dd>frame material .+ · kind of dropout .+ · dropout width .+</dd>", page)
    assert " · ".join(part.name for part in best.parts.values()) in page


def test_only_facts_that_a_check_rests_on_are_listed_with_their_tools(
    client: TestClient, app: FastAPI
) -> None:
    answers = bike("trekking-135-rim-brake").with_(
        replace(number("rotor_diameter_mm", Span(160_000, 160_000), "160"), tool="printed on the part")
    )

    page = opened(client, revised(app, answers))

    facts = page.partition("Facts used")[2].partition("</dl>")[0]
    line = re.search(r"<dt>A7 Dropout width <small>calipers</small></dt><dd>(.*?)</dd>", facts)
    assert line
    assert re.fullmatch(r"135\.\d\smm ± 0\.\d", line[1])
    assert "Rotor diameter" not in facts


def test_the_code_leads_to_the_build_at_the_shops_own_address(client: TestClient, app: FastAPI) -> None:
    code = revised(app, bike(FITS))

    page = opened(client, code)

    assert f"http://127.0.0.1:8000<wbr>/builds/{code}" in page
    assert str(qr_code(f"http://127.0.0.1:8000/builds/{code}")) in page


def test_a_public_address_is_what_is_printed(client: TestClient, app: FastAPI) -> None:
    site: Site = app.state.site
    public = Settings(data_folder=site.settings.data_folder, public_address="https://check.example.org/")
    object.__setattr__(site, "settings", public)
    code = revised(app, bike(FITS))

    page = opened(client, code)

    assert f"https://check.example.org<wbr>/builds/{code}" in page
    assert str(qr_code(f"https://check.example.org/builds/{code}")) in page


def test_the_printed_squares_are_those_of_the_code() -> None:
    address = "http://127.0.0.1:8000/builds/7Q4K-2M9Y"
    drawn = BytesIO()
    segno.make_qr(address, error="m").save(drawn, kind="svg", border=4)
    path = re.search(rb' d="([^"]+)"', drawn.getvalue())
    assert path

    svg = qr_code(address)

    assert f'd="{path[1].decode()}"' in svg
    assert 'role="img"' in svg
    assert "<title>QR code of the address</title>" in svg


def test_large_print_is_there_when_asked_for(client: TestClient, app: FastAPI) -> None:
    code = revised(app, bike(FITS))

    usual, large = opened(client, code), opened(client, code, print="large")

    assert f'<a href="/builds/{code}/sheet?revision=1&print=large">Large print</a>' in usual
    assert '<article class="sheet sheet--large">' in large
    assert f'<a href="/builds/{code}/sheet?revision=1">Usual print</a>' in large
    assert f'@bottom-left {{ content: "{code}, revision A"; font-size: 18pt; }}' in margins_of(
        client, code, large
    )
