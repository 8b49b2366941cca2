"""The demo bikes: complete bikes of many kinds, which between them make every rule say everything it can."""

from __future__ import annotations

import json
from collections import defaultdict
from functools import cache
from itertools import product
from pathlib import Path

import pytest

from app.drawings.paper_gauge import find_gauge
from app.facts.answers import Answer, Answers
from app.facts.fact import ChoiceFact
from app.facts.json_reader import read_json
from app.facts.reading import Reading
from app.facts.table import FACTS
from app.report.build import Checker
from app.report.report import Report
from app.rules.outcome import Outcome
from tests.demo import SEED_DATA, demo_catalogue, demo_standards, parts_of_kind

FILES = sorted((SEED_DATA / "bikes").glob("*.json"))
NAMES = [path.stem for path in FILES]
LITTLE_KNOWN = "almost-empty"
VERDICTS = {
    "steel-touring-135-qr": "Fits",
    "trekking-135-rim-brake": "Fits",
    "hardtail-148-xd": "Fits with care",
    "mountain-141-qr": "Fits with care",
    "cargo-long-tail": "Fits with care",
    "folding-20-inch": "Fits with care",
    "old-road-126": "Fits with care",
    "fat-197": "Not settled yet",
    "tape-measured-135": "Not settled yet",
    LITTLE_KNOWN: "Not settled yet",
    "gravel-142-flat-mount": "Doesn't fit",
    "city-belt": "Doesn't fit",
    "city-hub-gear": "Doesn't fit",
    "carbon-cyclocross-142": "Doesn't fit",
    "coaster-roadster": "Doesn't fit",
    "full-suspension-148": "Doesn't fit",
}


def _read(path: Path) -> Reading:
    data = json.loads(path.read_text("utf-8"))
    return read_json({"bike": data["bike"], "wish": data["wish"]})


@cache
def _checker() -> Checker:
    return Checker.of(demo_catalogue(), demo_standards())


@cache
def _report(name: str) -> Report:
    return _checker().report(_read(SEED_DATA / "bikes" / f"{name}.json").answers)


def _answers() -> list[Answers]:
    return [_read(path).answers for path in FILES]


def test_there_are_at_least_twelve_with_names_of_their_own() -> None:
    names = {json.loads(path.read_text("utf-8"))["name"] for path in FILES}

    assert len(names) == len(FILES) >= 12


@pytest.mark.parametrize("path", FILES, ids=NAMES)
def test_a_bike_is_read_without_an_error(path: Path) -> None:
    assert _read(path).errors == ()


@pytest.mark.parametrize("path", FILES, ids=NAMES)
def test_a_bike_is_complete_but_for_the_one_about_which_little_is_known(path: Path) -> None:
    known = [answer for answer in _read(path).answers.values() if answer.known]

    assert (len(known) < 5) if path.stem == LITTLE_KNOWN else (len(known) >= 40)


@pytest.mark.parametrize(("name", "verdict"), VERDICTS.items())
def test_a_bike_gets_the_verdict_that_a_shop_would_give(name: str, verdict: str) -> None:
    assert _report(name).verdict == verdict


def test_the_bikes_are_decided_by_many_different_rules() -> None:
    deciding = {_report(name).kits[0].deciding for name in NAMES}

    assert len(deciding) >= 8


def _gauges_held() -> list[Answers]:
    """A demo bike on which a gauge was held; its name is that of the parts as they are now."""
    bike = _read(SEED_DATA / "bikes" / "hardtail-148-xd.json").answers
    gauge = find_gauge(demo_catalogue(), "arm-long", "weir-148-thru")
    assert gauge is not None
    facts = [fact for fact in FACTS.values() if isinstance(fact, ChoiceFact) and fact.by_gauge]
    return [
        bike.with_(*(Answer(fact.name, "", gauge.name, words=frozenset(words)) for fact in facts))
        for words in (("yes",), ("touches",), ("yes", "touches"))
    ]


def test_every_rule_passes_fails_cannot_tell_and_does_not_apply_somewhere_in_the_demo() -> None:
    seen: dict[str, set[Outcome]] = defaultdict(set)
    for answers in [*_answers(), *_gauges_held()]:
        for bench in _checker().benches(answers):
            for parts in product(*map(parts_of_kind, bench.rule.part_kinds)):
                seen[bench.rule.id].add(bench.result(parts).outcome)

    missing = {rule: sorted(set(Outcome) - outcomes) for rule, outcomes in seen.items()}
    assert {rule: outcomes for rule, outcomes in missing.items() if outcomes} == {}
