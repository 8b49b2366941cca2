"""What stands in the fields of a sheet can be carried by a form and is the same when it comes back."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from app.facts.table import FACTS
from app.web.written import NOTHING, Written, sheet_from_json, sheet_to_json, written

WIDTH = FACTS["dropout_width_mm"]


@given(st.dictionaries(st.sampled_from(list(FACTS)), st.builds(Written, st.text(), st.text())))
def test_a_sheet_comes_back_as_it_was(sheet: dict[str, Written]) -> None:
    assert sheet_from_json(sheet_to_json(sheet)) == sheet


@given(st.text())
def test_what_is_no_sheet_is_an_empty_one_or_one_of_texts(text: str) -> None:
    assert all(isinstance(each, Written) for each in sheet_from_json(text).values())


@pytest.mark.parametrize(
    "text", ["", "[]", "1", '{"a": 1}', '{"a": ["b"]}', "{", '{"a": null}', "[" * 10_000]
)
def test_a_text_that_was_tampered_with_is_an_empty_sheet(text: str) -> None:
    assert sheet_from_json(text) == {}


def test_leaving_the_tool_at_its_first_choice_is_no_change() -> None:
    assert written(WIDTH, "135", "") == written(WIDTH, "135", "calipers")
    assert written(WIDTH, "135", "rule or tape") != written(WIDTH, "135", "calipers")


def test_a_tool_without_a_reading_says_nothing() -> None:
    assert written(WIDTH, "  ", "rule or tape") == NOTHING


def test_a_long_text_is_shown_cut() -> None:
    assert len(written(WIDTH, "1" * 1_000_000).typed) == 200
