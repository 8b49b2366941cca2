"""The result of a check: its verdict, the next thing to do, the kit, every finding, and what has moved on."""

from __future__ import annotations

import re
from html import unescape

import pytest
from fastapi import FastAPI
from fastapi.testclient import TestClient

from app.facts.answers import number
from app.facts.span import Span
from app.report.report import KitReport, Named
from app.store.codes import EXAMPLE
from app.web.result_parts import count_kits, effort
from tests.report.bikes import BIKES, bike, report_on
from tests.web.saved_builds import OLDER, draft, older_checker, revised
from tests.web.shown_builds import demo_bike, result_of, words_of

FITS, CARES, CLOSE = demo_bike("fit"), demo_bike("care"), demo_bike("close")
WIDE = "hardtail-148-xd"  # no axle set of the older catalogue is made for it
every_bike = pytest.mark.parametrize("name", BIKES)


def opened(client: TestClient, code: str, **query: str) -> str:
    response = client.get(f"/builds/{code}", params=query)
    assert response.status_code == 200
    return response.text


def in_order(page: str, *texts: str) -> bool:
    places = [page.find(text) for text in texts]
    return -1 not in places and places == sorted(places)


@every_bike
def test_the_verdict_of_every_demo_bike_is_the_heading(name: str) -> None:
    report = report_on(name)

    page = words_of(result_of(name))

    assert f"<title>{report.verdict} – Alder Lock Cycles</title>" in page
    assert f"<h1>{report.verdict}</h1>" in page
    assert f'<div class="outcome" data-state="{report.state}">' in page
    assert report.sentence in page
    assert f"{report.settled} of {report.total} checks settled" in page


@every_bike
def test_every_finding_can_be_opened_by_its_rule(name: str) -> None:
    best = report_on(name).best
    assert best

    page = words_of(result_of(name))

    anchors = re.findall(r'<article class="finding" data-state="[a-z]+" id="([a-z_]+)">', page)
    assert sorted(anchors) == sorted(each.rule_id for each in best.findings)
    for each in best.findings:
        assert each.sentence in page
        assert each.remedy in page
        assert each.source in page
        assert f'href="/rules/{each.rule_id}"' in page


def test_the_result_goes_from_the_verdict_to_the_code(client: TestClient, app: FastAPI) -> None:
    code = revised(app, bike(CARES))

    page = unescape(opened(client, code))

    assert in_order(
        page, "<h1>Fits with care</h1>", "checks settled", "Best kit: ", "<h2>Jobs</h2>",
        "<h2>Things to know</h2>", "<summary>Other kits: ", "<h2>All checks</h2>", "Take care",
        " checks passed</summary>", " checks don't apply</summary>",
        f'Take this code to the shop: <strong class="code-tag__code">{code}',
        f'href="/builds/{code}/sheet">Print</a>',
    )  # fmt: skip
    assert "What would make it fit" not in page
    assert "Do this next" not in page


@every_bike
def test_what_passed_and_what_does_not_apply_is_folded(name: str) -> None:
    best = report_on(name).best
    assert best

    unfolded = re.sub(r"<details.*?</details>", "", result_of(name), flags=re.DOTALL)

    states = re.findall(r'<article class="finding" data-state="([a-z]+)"', unfolded)
    assert sorted(states) == sorted(each.state for each in best.findings if each.state not in {"fit", "skip"})


def test_what_is_not_settled_says_what_to_do_next(client: TestClient, app: FastAPI) -> None:
    code = revised(app, bike(CLOSE))
    ask = report_on(CLOSE).ask_next[0]

    page = opened(client, code)

    assert in_order(page, "<h1>Not settled yet</h1>", "Do this next", "next__what", "Takes ", "Best kit")
    assert f'href="/builds/{code}/counter#{ask.fact}"' in page
    assert f"Settles {ask.settles} of {ask.open_checks} open checks." in page


def test_what_does_not_fit_says_what_would_make_it_fit(client: TestClient, app: FastAPI) -> None:
    name = next(name for name in BIKES if report_on(name).nearest_fit)
    page = unescape(opened(client, revised(app, bike(name))))
    nearest = report_on(name).nearest_fit

    assert '<a href="#nearest">What would make it fit</a>' in page
    assert in_order(
        page, "Nearest kit: ", "Take this code to the shop", '<section class="next" id="nearest">'
    )
    assert all(change in page for each in nearest for change in each.changes)
    assert "<h2>Jobs</h2>" not in page


def test_a_draft_is_judged_now_and_says_so(client: TestClient, app: FastAPI) -> None:
    page = opened(client, draft(app, bike(FITS)))

    assert "Judged just now. No revision is saved yet." in page
    assert "<h1>Fits</h1>" in page


def test_the_saved_words_stay_when_the_catalogue_moves_on(client: TestClient, app: FastAPI) -> None:
    code = revised(app, bike(WIDE), checker=older_checker())
    now = report_on(WIDE).catalogue_revision

    page = unescape(opened(client, code))

    assert "<h1>Doesn't fit</h1>" in page
    assert f"The catalogue changed since this check (revision {OLDER}, now {now})." in page
    assert f'<a href="/builds/{code}/moved">See what moved</a>' in page


def test_the_new_words_are_there_when_asked_for(client: TestClient, app: FastAPI) -> None:
    code = revised(app, bike(WIDE), checker=older_checker())

    page = opened(client, code, judged="now")

    assert f"<h1>{report_on(WIDE).verdict}</h1>" in page
    assert "Judged just now. Revision A keeps the words that were saved." in page


def test_facts_that_changed_since_are_counted(client: TestClient, app: FastAPI) -> None:
    answers = bike(FITS)
    code = revised(app, answers)
    draft(app, answers.with_(number("dropout_width_mm", Span(134_000, 134_600), "134.3")), code)

    page = opened(client, code)

    assert "One fact changed since revision A was saved." in page
    assert "<h1>Fits</h1>" in page


def test_a_revision_that_still_stands_says_nothing_of_it(client: TestClient, app: FastAPI) -> None:
    assert '<p class="notice">' not in opened(client, revised(app, bike(FITS)))


@pytest.mark.parametrize("path", ["", "/compare", "/moved", "/revisions", "/revisions/1", "/sheet"])
@pytest.mark.parametrize(
    ("code", "said"),
    [
        (EXAMPLE, f"We have no check with the code {EXAMPLE}. Check the last four characters."),
        ("7Q4K-2M9X", "One character of this code is wrong. I, L, O, U, 0 and 1 are never used."),
    ],
)
def test_a_code_that_opens_nothing_leads_to_the_code_field(
    path: str, code: str, said: str, client: TestClient
) -> None:
    response = client.get(f"/builds/{code}{path}")

    assert response.status_code == 404
    assert said in response.text
    assert 'action="/builds/open"' in response.text


def test_a_code_is_known_however_it_is_written(client: TestClient, app: FastAPI) -> None:
    code = draft(app, bike(FITS))

    assert "<h1>Fits</h1>" in opened(client, code.lower().replace("-", ""))


@pytest.mark.parametrize(
    ("seconds", "said"),
    [(10, "less than a minute"), (45, "about a minute"), (90, "about 2 minutes"), (300, "about 5 minutes")],
)
def test_an_effort_is_said_as_a_person_would(seconds: int, said: str) -> None:
    assert effort(seconds) == said


@pytest.mark.parametrize(
    ("states", "best_fits", "said"),
    [
        ("fit care no no no", True, "2 more fit, 3 don't"),
        ("care", True, "1 more fits"),
        ("fit open no", True, "1 more fits, 1 isn't settled, 1 doesn't"),
        ("open close no", False, "2 aren't settled, 1 doesn't fit"),
        ("no no", False, "2 don't fit"),
        ("no", False, "1 doesn't fit"),
    ],
)
def test_the_other_kits_are_counted_in_words(states: str, best_fits: bool, said: str) -> None:  # noqa: FBT001
    kits = [KitReport(Named("rill", "Rill"), state, "", "", "", "") for state in states.split()]

    assert count_kits(kits, best_fits=best_fits) == f"Other kits: {said}"
