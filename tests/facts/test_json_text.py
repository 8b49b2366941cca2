"""JSON is taken as strictly as programs agreed on it, and what is wrong is told by its place."""

from __future__ import annotations

import math

import pytest

from app.facts.json_text import NotJsonError, parse_json


@pytest.mark.parametrize(
    ("body", "value"),
    [
        (b'{"bike": {"rim_holes": 36}}', {"bike": {"rim_holes": 36}}),
        (b'\xef\xbb\xbf{"bike": null}', {"bike": None}),
        ('"134,6 ± 0.2 \\ud83d\\udeb2"'.encode(), "134,6 ± 0.2 🚲"),
        (b"[-Infinity, 1e999]", [-math.inf, math.inf]),
    ],
)
def test_json_is_read(body: bytes, value: object) -> None:
    assert parse_json(body) == value


def test_nan_is_left_to_whoever_reads_the_facts() -> None:
    value = parse_json(b"NaN")

    assert isinstance(value, float)
    assert math.isnan(value)


@pytest.mark.parametrize(
    ("body", "sentence"),
    [
        (b"", "This isn't JSON: line 1, column 1: expecting value."),
        (
            b"{'bike': {}}",
            "This isn't JSON: line 1, column 2: expecting property name enclosed in double quotes.",
        ),
        (b'{"bike":\n{}} {}', "This isn't JSON: line 2, column 5: extra data."),
        (b'"\xe9"', "This isn't UTF-8 text: byte 2 can't be read."),
        ("{}".encode("utf-16"), "This isn't UTF-8 text: byte 1 can't be read."),
        (b'[{"rim_holes": 32, "rim_holes": 36}]', "The name rim_holes stands twice in one object. Keep one."),
        (b'"\\ud800"', "This JSON holds half a character, such as \\ud800 without its other half."),
        pytest.param(b"[" * 200_000, "This JSON can't be read: it is nested too deeply.", id="200,000 deep"),
        pytest.param(
            b"9" * 5000,
            "This JSON can't be read: a whole number in it has too many digits.",
            id="5,000 digits",
        ),
    ],
)
def test_what_is_no_json_is_told_where_and_why(body: bytes, sentence: str) -> None:
    with pytest.raises(NotJsonError) as refused:
        parse_json(body)

    assert str(refused.value) == sentence


def test_a_long_name_that_stands_twice_is_cut() -> None:
    name = b'"' + b"x" * 9000 + b'": 1'

    with pytest.raises(NotJsonError, match=r"^The name x{39}… stands twice in one object\. Keep one\.$"):
        parse_json(b"{" + name + b"," + name + b"}")
