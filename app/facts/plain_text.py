"""What was typed, with one character for everything that looks the same: digits, dashes, spaces, quotes."""

from __future__ import annotations

import re
import unicodedata

LONGEST = 200
SHORT = 40

GROUPING_SPACE = re.compile(r"(?<=\d)[\u00a0\u2007\u2008\u2009\u202f](?=\d{3}(?!\d))")
DOTS = re.compile(r"\.{3,}")
FRACTION_SLASH = "\u2044"
SAME = {"…": "..", "−": "-", "\u2215": "/", "″": '"', "“": '"', "”": '"', "’": "'", "≤": "<", "≥": ">"}
NOT_KNOWN_WORDS = frozenset({"?", "i don't know", "don't know", "not known", "unknown"})


def plain(typed: str) -> str:
    """The text in lower case and plain characters, without spaces at its ends."""
    text = typed if typed.isascii() else _plain_characters(typed)
    text = text.replace("+/-", "±").replace("+-", "±").replace("<=", "<").replace(">=", ">")
    return " ".join(DOTS.sub("..", text).casefold().split())


def says_not_known(text: str) -> bool:
    """Whether a plain text is the answer 'I don't know'."""
    return text in NOT_KNOWN_WORDS


def cut(typed: str, longest: int = LONGEST) -> str:
    """The text as it is given back: no longer than what anybody types on purpose."""
    return typed if len(typed) <= longest else typed[: longest - 1] + "…"


def _plain_characters(typed: str) -> str:
    return "".join(_plain_character(each) for each in GROUPING_SPACE.sub("", typed))


def _plain_character(character: str) -> str:
    if character.isascii():
        return character
    if character in SAME:
        return SAME[character]
    if unicodedata.decomposition(character).startswith("<fraction>"):
        return " " + unicodedata.normalize("NFKC", character)
    if "！" <= character <= "～":  # noqa: RUF001 - the full-width twins of ASCII
        return chr(ord(character) - 0xFEE0)
    return _by_category(character)


def _by_category(character: str) -> str:
    match unicodedata.category(character):
        case "Cf":
            return ""
        case "Zs" | "Zl" | "Zp":
            return " "
        case "Pd":
            return "-"
        case "Nd":
            return str(unicodedata.decimal(character))
        case _:
            return character
