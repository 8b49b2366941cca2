"""A text can't run anything, can't unfold to more than it is, and can't hide a value behind another."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from app.catalogue.catalogue import KINDS
from app.catalogue.yaml_text import DEEPEST, LARGEST_TEXT_BYTES, read_yaml, write_yaml
from tests.catalogue.small_catalogue import faults_in, small, texts_of

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


ODD = st.one_of(
    st.sampled_from(["", "no", "-1", "1e400", "1e-999999999", "sNaN", "9" * 5000, "٣", "1_0", "0x1", " 5 "]),
    st.text(max_size=8),
    st.lists(st.text(max_size=3), max_size=3),
    st.dictionaries(
        st.sampled_from(["value", "plus_minus", "low", "high"]), st.sampled_from(["1", "-2", "1e-9", "x"])
    ),
)


@st.composite
def odd_parts(draw: st.DrawFn) -> tuple[str, dict[str, object]]:
    """A part of some kind, some of whose values are odd."""
    plural = draw(st.sampled_from(list(KINDS)))
    fields = draw(st.lists(st.sampled_from([*KINDS[plural].model_fields, "colour"]), max_size=6, unique=True))
    return plural, small()[plural][0] | {field: draw(ODD) for field in fields}


@given(odd_parts())
def test_no_odd_value_of_a_part_is_more_than_a_fault(odd: tuple[str, dict[str, object]]) -> None:
    plural, part = odd

    faults = faults_in(texts_of(small()) | {f"{plural}.yaml": write_yaml([part])})

    assert all(fault.message for fault in faults)


@given(st.text(max_size=60))
def test_no_text_is_more_than_a_fault(text: str) -> None:
    faults = faults_in({"hubs.yaml": text})

    assert faults or "[]" in text.replace(" ", "")


def test_a_byte_order_mark_is_not_part_of_the_text() -> None:
    assert read_yaml("hubs.yaml", "\ufeffa: b") == ({"a": "b"}, ())
