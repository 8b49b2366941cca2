"""A code survives being read out over the telephone and typed by someone else."""

from itertools import pairwise
from string import ascii_letters

import pytest
from hypothesis import given
from hypothesis import strategies as st

from app.store.codes import ALPHABET, EXAMPLE, CodeError, check_character, new_code, normalise

drawn = st.text(ALPHABET, min_size=7, max_size=7)
issued = st.builds(lambda random: new_code(random.choice), st.randoms(use_true_random=False))


def swapped(code: str, place: int) -> str:
    return code[:place] + code[place + 1] + code[place] + code[place + 2 :]


def reads_as_a_code(text: str) -> bool:
    try:
        normalise(text)
    except CodeError:
        return False
    return True


def kind_of_error(text: str) -> str:
    with pytest.raises(CodeError) as caught:
        normalise(text)
    return caught.value.kind


def test_the_alphabet_has_thirty_characters_and_none_that_look_alike() -> None:
    assert len(set(ALPHABET)) == 30
    assert not set(ALPHABET) & set("ILOU01")


@pytest.mark.parametrize(
    "text",
    [
        "7Q4K-2M9Y",
        "7q4k-2m9y",
        "7Q4K2M9Y",
        " 7q4K 2m9Y ",
        "7Q4K–2M9Y",
        "7Q4K\N{NON-BREAKING HYPHEN}2M9Y",
        "7-Q-4-K-2-M-9-Y",
    ],
)
def test_a_code_is_read_in_any_case_with_or_without_its_hyphen(text: str) -> None:
    assert normalise(text) == EXAMPLE == "7Q4K-2M9Y"


@pytest.mark.parametrize(
    ("seven", "check"),
    [
        pytest.param("2222222", "2", id="all places 0: 0"),
        pytest.param("3222222", "3", id="1 x 1 = 1"),
        pytest.param("2222223", "S", id="23 x 1 = 23"),
        pytest.param("ZZZZZZZ", "Z", id="29 x 91 = 2639 = 29 modulo 30"),
        pytest.param("3456789", "C", id="1 + 14 + 33 + 52 + 85 + 114 + 161 = 460 = 10 modulo 30"),
    ],
)
def test_the_check_character_is_the_weighted_sum(seven: str, check: str) -> None:
    assert check_character(seven) == check


@given(issued)
def test_a_code_that_was_issued_is_read_as_itself(code: str) -> None:
    assert normalise(code) == code


@given(drawn)
def test_every_single_wrong_character_shows(seven: str) -> None:
    code = seven + check_character(seven)

    wrong = [
        code[:place] + other + code[place + 1 :]
        for place, right in enumerate(code)
        for other in ALPHABET
        if other != right
    ]

    assert len(wrong) == 8 * 29
    assert {kind_of_error(text) for text in wrong} == {"check"}


@given(issued)
def test_every_swap_of_two_neighbours_shows_in_a_code_that_was_issued(code: str) -> None:
    bare = code.replace("-", "")

    swaps = [swapped(bare, place) for place in range(7) if bare[place] != bare[place + 1]]

    assert all(kind_of_error(text) == "check" for text in swaps)


@given(drawn)
def test_a_swap_goes_unseen_only_between_neighbours_that_are_never_issued(seven: str) -> None:
    code = seven + check_character(seven)
    apart = [abs(ALPHABET.index(left) - ALPHABET.index(right)) for left, right in pairwise(code)]

    for place, distance in enumerate(apart):
        goes_unseen = distance % (5 if place in {0, 6} else 15) == 0

        assert reads_as_a_code(swapped(code, place)) == goes_unseen


@pytest.mark.parametrize("letter", "ILOU01ilou")
def test_a_letter_that_is_never_used_is_a_wrong_character(letter: str) -> None:
    assert kind_of_error(f"7Q4K-2M9{letter}") == "check"


@pytest.mark.parametrize("text", ["", "7Q4K", "7Q4K-2M9", "7Q4K-2M9Y7", "-", "7" * 100_000])
def test_a_text_of_another_length_has_no_shape_of_a_code(text: str) -> None:
    assert kind_of_error(text) == "shape"


@given(st.text(min_size=8, max_size=8).filter(lambda text: not set(text) <= set(ascii_letters + "23456789")))
def test_letters_of_other_scripts_never_pass_for_ours(text: str) -> None:
    with pytest.raises(CodeError):
        normalise(text)


def test_the_long_s_and_the_kelvin_sign_are_not_taken_for_s_and_k() -> None:
    assert kind_of_error("7Q4\N{KELVIN SIGN}-2M9Y") == "check"
    assert kind_of_error("7Q4K-2M9\N{LATIN SMALL LETTER LONG S}") == "check"


def test_a_wrong_code_is_told_in_a_sentence() -> None:
    with pytest.raises(CodeError, match="One character of this code is wrong"):
        normalise("7Q4K-2M9X")
    with pytest.raises(CodeError, match="A code has eight characters, like 7Q4K-2M9Y"):
        normalise("7Q4K")
