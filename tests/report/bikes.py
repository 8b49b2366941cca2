"""The demo bikes by the names of their files."""

from __future__ import annotations

import json
from functools import cache

from app.facts.answers import Answers
from app.facts.json_reader import read_json
from app.report.build import Checker
from app.report.report import Report
from tests.demo import SEED_DATA, demo_catalogue, demo_standards

BIKES = {path.stem: path for path in sorted((SEED_DATA / "bikes").glob("*.json"))}


@cache
def bike(name: str) -> Answers:
    """One demo bike."""
    data = json.loads(BIKES[name].read_text("utf-8"))
    reading = read_json({"bike": data.get("bike"), "wish": data.get("wish")})
    assert not reading.errors
    return reading.answers


@cache
def checker() -> Checker:
    """The demo catalogue, ready for checks."""
    return Checker.of(demo_catalogue(), demo_standards())


@cache
def report_on(name: str) -> Report:
    """The report on a demo bike."""
    return checker().report(bike(name))
