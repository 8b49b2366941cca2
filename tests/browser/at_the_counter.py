"""What a tech does at the counter in a browser, and what stands on the sheet."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Page

from app.facts.fact import ChoiceFact
from app.facts.table import FACTS

BIKE = Path(__file__).parents[2] / "seed_data" / "bikes" / "hardtail-148-xd.json"
IN_HAND = "document.activeElement.closest('[data-row]')?.dataset.row"
ON_SHEET = """() => Object.fromEntries(
  [...document.querySelectorAll("[data-row]")].map((row) => [
    row.dataset.row,
    (row.querySelector(".entry__line") ?? row.querySelector("input:checked"))?.value ?? "",
  ]),
)"""


def typed(value: Any) -> str:  # noqa: ANN401 - whatever a demo bike holds
    """A value of a demo bike as a tech types it."""
    if isinstance(value, dict):
        return (
            f"{value['value']} ± {value['plus_minus']}"
            if "value" in value
            else f"{value['low']}..{value['high']}"
        )
    return str(value)


def demo_bike() -> dict[str, str]:
    """The facts of a demo bike, each as it is typed."""
    bike = json.loads(BIKE.read_text("utf-8"))
    return {name: typed(value) for section in ("bike", "wish") for name, value in bike[section].items()}


def type_in(page: Page, fact: str, text: str) -> None:
    """Answer the fact in hand: a choice by its letter, a number by typing it."""
    kind = FACTS[fact]
    if isinstance(kind, ChoiceFact):
        page.keyboard.press(next(word.key for word in kind.words if word.word == text))
    else:
        page.keyboard.type(text)


def tab_to(page: Page, fact: str) -> None:
    """Press Tab until a fact is in hand."""
    for _ in range(40):
        if page.evaluate(IN_HAND) == fact:
            return
        page.keyboard.press("Tab")
    pytest.fail(f"Tab never came to {fact}")
