"""Where the chainstay can't serve, the report says what else on the bike could hold an arm."""

from __future__ import annotations

import pytest

from app.catalogue.part import Part
from app.facts.answers import Answers, choice, number
from app.facts.span import Span
from app.report.findings import FindingsOf
from app.report.other_anchor import NO_PLACE, with_other_anchors
from app.rules.register import BY_ID
from app.rules.rule import PART_KINDS
from tests.demo import demo_standards
from tests.report.bikes import bike, checker, report_on

NO_FREE_STRETCH = number("stay_clear_to_mm", Span.exactly(70))


def best_parts(name: str) -> tuple[Part, ...]:
    by_id = {part.id: part for kind in PART_KINDS for part in checker().catalogue.parts(f"{kind}s")}
    return tuple(by_id[part_id] for part_id in report_on(name).combinations[0].key.split("+"))


def remedies(name: str, answers: Answers) -> dict[str, str]:
    parts = best_parts(name)
    findings = FindingsOf(checker().benches(answers), answers).about(parts)
    found = with_other_anchors(answers, parts, findings, demo_standards())
    return {each.rule_id: each.remedy for each in found if each.state == "no"}


def test_every_rule_about_a_place_is_in_the_register() -> None:
    assert set(NO_PLACE) <= set(BY_ID)


@pytest.mark.parametrize(
    ("mount", "words"), [("is", "The IS mount is free"), ("post", "The post mount is free")]
)
def test_an_unused_mount_is_named_where_the_stay_has_no_free_stretch(mount: str, words: str) -> None:
    answers = bike("trekking-135-rim-brake").with_(NO_FREE_STRETCH, choice("caliper_mount", {mount}))

    assert words in remedies("trekking-135-rim-brake", answers)["arm_reach"]


def test_a_seatstay_without_a_caliper_is_named_and_one_with_it_is_not() -> None:
    on_chainstay, on_seatstay = (
        bike("steel-touring-135-qr").with_(NO_FREE_STRETCH, choice("caliper_seat", {seat}))
        for seat in ("chainstay", "seatstay")
    )

    assert "seatstay has no caliper" in remedies("steel-touring-135-qr", on_chainstay)["arm_reach"]
    assert "seatstay has no caliper" not in remedies("steel-touring-135-qr", on_seatstay)["arm_reach"]


def test_a_carbon_stay_is_not_answered_with_another_carbon_stay() -> None:
    answers = bike("trekking-135-rim-brake").with_(choice("stay_material", {"carbon"}))

    assert "seatstay" not in remedies("trekking-135-rim-brake", answers)["no_clamp_on_carbon"]


def test_a_bike_whose_arm_finds_its_place_is_left_alone() -> None:
    answers = bike("trekking-135-rim-brake")
    parts = best_parts("trekking-135-rim-brake")

    findings = FindingsOf(checker().benches(answers), answers).about(parts)

    assert with_other_anchors(answers, parts, findings, demo_standards()) == tuple(findings)
