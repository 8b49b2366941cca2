"""The code of a build: seven random characters and an eighth that shows most mistakes of typing.

Every single wrong character shows. A swap of two neighbours would go unseen where they stand 15 apart in
the alphabet, or any multiple of 5 apart for the first two and the last two: the weights are odd, as they
must be to show every wrong character, so their differences are even and share a divisor with 30. Codes with
such neighbours are never issued, and so a swap in a code that was issued always shows.
"""

import secrets
import unicodedata
from collections.abc import Callable
from itertools import pairwise
from typing import Literal

ALPHABET = "23456789ABCDEFGHJKMNPQRSTVWXYZ"
EXAMPLE = "7Q4K-2M9Y"

_WEIGHTS = (1, 7, 11, 13, 17, 19, 23)
_LENGTH = len(_WEIGHTS) + 1
_SENTENCES = {
    "check": "One character of this code is wrong. I, L, O, U, 0 and 1 are never used.",
    "shape": f"A code has eight characters, like {EXAMPLE}.",
}


class CodeError(ValueError):
    """What was typed is no code: its shape is wrong, or a character of it."""

    def __init__(self, kind: Literal["check", "shape"]) -> None:
        super().__init__(_SENTENCES[kind])
        self.kind = kind


def new_code(choose: Callable[[str], str] = secrets.choice) -> str:
    """A code drawn at random, as it is shown; whether it is taken already only the store knows."""
    while True:
        drawn = "".join(choose(ALPHABET) for _ in _WEIGHTS)
        code = drawn + check_character(drawn)
        if not any(_is_right(swapped) for swapped in _neighbours_swapped(code)):
            return _shown(code)


def normalise(text: str) -> str:
    """The code as it is shown, from any case, with or without hyphen and spaces; or a CodeError."""
    characters = [character for character in text if not _separates(character)]
    if len(characters) != _LENGTH:
        raise CodeError("shape")
    code = "".join(character.upper() if character.isascii() else "?" for character in characters)
    if not _is_right(code):
        raise CodeError("check")
    return _shown(code)


def check_character(drawn: str) -> str:
    """The eighth character: the weighted sum of the seven places in the alphabet, modulo 30."""
    total = sum(weight * ALPHABET.index(character) for weight, character in zip(_WEIGHTS, drawn, strict=True))
    return ALPHABET[total % len(ALPHABET)]


def _separates(character: str) -> bool:
    # Pd is every dash that a phone or a word processor makes of a hyphen.
    return character.isspace() or unicodedata.category(character) == "Pd"


def _is_right(code: str) -> bool:
    return set(code) <= set(ALPHABET) and check_character(code[:-1]) == code[-1]


def _neighbours_swapped(code: str) -> list[str]:
    return [
        code[:place] + second + first + code[place + 2 :]
        for place, (first, second) in enumerate(pairwise(code))
        if first != second
    ]


def _shown(code: str) -> str:
    return f"{code[:4]}-{code[4:]}"
