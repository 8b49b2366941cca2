"""What is said to clear a collision does clear it, and where nothing does, that is said."""

from __future__ import annotations

import re

import pytest

from app.catalogue.part import Part
from app.facts.answers import Answers, number
from app.facts.span import Span
from app.report.collision import COLLISIONS, NOTHING, with_ways_clear
from app.report.findings import FindingsOf
from app.report.report import Finding
from app.rules.evaluate import Bench
from app.rules.outcome import Outcome
from app.rules.register import BY_ID
from app.rules.rule import PART_KINDS
from tests.report.bikes import bike, checker

DISC_BIKES = ("steel-touring-135-qr", "mountain-141-qr", "hardtail-148-xd", "gravel-142-flat-mount")
BULKY = number("caliper_inboard_depth_mm", Span.exactly(30))


def best_parts(answers: Answers) -> tuple[Part, ...]:
    """The parts of the combination that a shop would have taken."""
    key = checker().report(answers).combinations[0].key.split("+")
    catalogue = checker().catalogue
    return tuple(
        next(part for part in catalogue.parts(f"{kind}s") if part.id == wanted)
        for kind, wanted in zip(PART_KINDS, key, strict=True)
    )


def collided(answers: Answers, parts: tuple[Part, ...]) -> dict[str, Finding]:
    """The findings about collisions, with what was tried."""
    plain = FindingsOf(checker().benches(answers), answers).about(parts)
    found = with_ways_clear(checker(), answers, parts, plain)
    return {
        each.rule_id: each for each in found if each.rule_id in COLLISIONS and each.state in ("no", "care")
    }


def test_every_collision_is_a_rule_of_the_register() -> None:
    assert set(COLLISIONS) <= set(BY_ID)


@pytest.mark.parametrize("name", DISC_BIKES)
def test_a_part_that_is_said_to_clear_the_motor_shell_does(name: str) -> None:
    parts = best_parts(bike(name))
    answers = bike(name).with_(BULKY)

    found = collided(answers, parts)

    assert "shell_caliper" in found
    for axle_set_name in re.findall(r"Take ([^:]+): [\d.]+\S* in hand", found["shell_caliper"].remedy):
        axle_set = next(each for each in checker().catalogue.axle_sets if each.name == axle_set_name)
        bench = Bench(BY_ID["shell_caliper"], answers, checker().catalogue, checker().standards)
        assert bench.result((parts[0], axle_set)).outcome is Outcome.PASSED


@pytest.mark.parametrize("name", DISC_BIKES)
def test_where_nothing_clears_it_that_is_said(name: str) -> None:
    parts = best_parts(bike(name))
    hopeless = bike(name).with_(number("caliper_inboard_depth_mm", Span.exactly(60)))

    remedy = collided(hopeless, parts)["shell_caliper"].remedy

    assert remedy.endswith(NOTHING) or "It may clear" in remedy


def test_a_bike_without_a_collision_keeps_its_findings() -> None:
    answers = bike("steel-touring-135-qr")
    parts = best_parts(answers)
    plain = FindingsOf(checker().benches(answers), answers).about(parts)

    assert with_ways_clear(checker(), answers, parts, plain) == plain
