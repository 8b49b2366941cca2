"""A text can't run anything, can't unfold to more than it is, and can't hide a value behind another."""

from __future__ import annotations

import pytest

from app.catalogue.yaml_text import DEEPEST, LARGEST_TEXT_BYTES, read_yaml

LAUGHS = "a: &a [x, x, x]\nb: &b [*a, *a, *a]\nc: [*b, *b, *b]\n"


@pytest.mark.parametrize(
    ("text", "words"),
    [
        pytest.param(LAUGHS, "anchors (&) and aliases (*)", id="aliases that unfold"),
        pytest.param("a: !!python/object/apply:os.getcwd []", "tags (!)", id="a call"),
        pytest.param("a: !mine b", "tags (!)", id="a tag of one's own"),
        pytest.param("a: 1\nb: 2\na: 3", "'a' stands 2 times", id="a key twice"),
        pytest.param("- x: {q: 1, q: 2}", "'q' stands 2 times", id="a key twice, further in"),
        pytest.param("a: [1, 2", "line 2: this is not YAML", id="a bracket that stays open"),
        pytest.param("a: 'b", "this is not YAML", id="a quote that stays open"),
        pytest.param("a: b: c", "line 1: this is not YAML", id="two colons"),
        pytest.param("--- a\n--- b", "this is not YAML", id="two documents"),
        pytest.param("? [a]\n: b", "this is not YAML", id="a list for a key"),
        pytest.param("a: \x00", "this is not YAML", id="a control character"),
        pytest.param("a: \ud800", "half a character", id="half a character"),
        pytest.param(
            "[" * (DEEPEST + 1) + "]" * (DEEPEST + 1), f"deeper than {DEEPEST}", id="nested too deep"
        ),
        pytest.param("[" * 200_000, "", id="nested very deep"),
        pytest.param("#" * (LARGEST_TEXT_BYTES + 1), "2,000,000 are allowed", id="too long"),
        pytest.param("ä" * LARGEST_TEXT_BYTES, "4,000,000 bytes", id="too long in bytes"),
    ],
)
def test_a_text_that_is_no_plain_list_of_values_is_refused(text: str, words: str) -> None:
    content, faults = read_yaml("hubs.yaml", text)

    assert faults
    assert words in faults[0].message
    assert all((fault.file, fault.part) == ("hubs.yaml", "") for fault in faults)
    assert content is None or "stands" in faults[0].message


@pytest.mark.parametrize(
    "word", ["no", "yes", "null", "~", "1.10", "0x10", "1e5", "2026-01-02", "1_000", "08"]
)
def test_every_word_stays_the_text_that_it_is(word: str) -> None:
    content, faults = read_yaml("hubs.yaml", f"a: {word}")

    assert (content, faults) == ({"a": word}, ())


def test_several_keys_that_stand_twice_are_all_named() -> None:
    _, faults = read_yaml("hubs.yaml", "- {a: 1, a: 2}\n- {b: 1, b: 2, b: 3}")

    assert ["'a' stands 2 times" in faults[0].message, "'b' stands 3 times" in faults[1].message] == [
        True,
        True,
    ]


def test_a_byte_order_mark_is_not_part_of_the_text() -> None:
    assert read_yaml("hubs.yaml", "\ufeffa: b") == ({"a": "b"}, ())
