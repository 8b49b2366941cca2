"""While somebody types, the sheet is judged as it stands on the screen, and nothing is saved."""

from __future__ import annotations

import re

from fastapi import FastAPI
from fastapi.testclient import TestClient
from sqlmodel import col, func, select

from app.facts.table import FACTS
from app.store.tables import Build
from tests.web.counter_sheet import row

NARROW = {"frame_material": "carbon", "dropout_kind": "thru_axle", "dropout_width_mm": "100"}


def test_each_fact_gets_its_answer(client: TestClient) -> None:
    html = client.post("/counter/live", data={"smallest_cog": "11"}).text

    assert re.findall(r'data-for="([a-z_0-9]+)"', html) == list(FACTS)


def test_a_verdict_comes_at_once_with_its_reason_at_the_fact(client: TestClient) -> None:
    html = client.post("/counter/live", data=NARROW).text

    width = row(html, "dropout_width_mm")
    assert 'data-state="no"' in width
    assert "Doesn&#39;t fit" in width
    assert "100.0\u202fmm ± 0.3" in width
    assert "0 of " in html.partition('id="standing">')[2][:10]


def test_the_other_facts_of_a_verdict_point_to_the_one_that_was_measured(client: TestClient) -> None:
    html = client.post("/counter/live", data=NARROW).text

    assert "See A7" in row(html, "dropout_kind")


def test_a_fact_that_does_not_concern_this_bike_says_so(client: TestClient) -> None:
    html = client.post("/counter/live", data={"rear_brake": "rim"}).text

    assert "Doesn&#39;t apply" in row(html, "rotor_diameter_mm")


def test_a_fact_that_a_check_still_lacks_is_not_known_yet(client: TestClient) -> None:
    html = client.post("/counter/live", data={"rear_brake": "disc"}).text

    assert "Not known yet" in row(html, "rotor_diameter_mm")
    assert "Not known yet" not in row(html, "rear_brake")


def test_a_number_that_is_half_typed_is_no_mistake_yet(client: TestClient) -> None:
    html = client.post("/counter/live", data={"dropout_width_mm": "1", "in_hand": "dropout_width_mm"}).text

    assert "must be between" not in html


def test_when_it_is_left_it_is_told_what_is_wrong(client: TestClient) -> None:
    html = client.post("/counter/live", data={"dropout_width_mm": "1346", "in_hand": ""}).text

    message = "Dropout width must be between 80 and 220\u202fmm. You typed 1346; did you mean 134.6?"
    assert message in row(html, "dropout_width_mm")
    assert f'<a href="#dropout_width_mm">{message}</a>' in html


def test_of_two_facts_that_cannot_both_be_neither_is_believed(client: TestClient) -> None:
    html = client.post("/counter/live", data={"rear_brake": "coaster", "rotor_diameter_mm": "160"}).text

    message = "A coaster brake and a disc brake can&#39;t both be at the rear. Change one."
    assert message in row(html, "rear_brake")
    assert message in row(html, "rotor_diameter_mm")
    assert "data-state" not in row(html, "rear_brake")
    assert '<a href="#rotor_diameter_mm">Or change B5, Rotor diameter</a>' in html


def test_what_is_typed_is_escaped(client: TestClient) -> None:
    html = client.post("/counter/live", data={"dropout_width_mm": "<script>alert(1)</script>"}).text

    assert "<script>" not in html


def test_judging_saves_nothing(client: TestClient, app: FastAPI) -> None:
    client.post("/counter/live", data=NARROW)

    with app.state.store.reading() as session:
        assert session.exec(select(func.count(col(Build.id)))).one() == 0
