"""Every sentence that reading an answer can say, with gaps for the fact, its limits and what was typed."""

from __future__ import annotations

from collections.abc import Iterable

THIN = "\u202f"

NOT_KNOWN = "Not known"
OR = " or "
PLUS_MINUS = "{value} ± {half}"
RANGE = "{low} to {high}"

ENTER = "Enter the {fact}, or choose I don't know"
SELECT = "Select the {fact}, or I don't know"
NUMBER = "{label} must be a number, like {whole} or {broken}"
ROUND_NUMBER = "{label} must be a number, like {whole}"
WHOLE_NUMBER = "{label} must be a whole number, like {whole}"
OUTSIDE = "{label} must be between {low} and {high}. You typed {typed}."
OUTSIDE_MEANT = "{label} must be between {low} and {high}. You typed {typed}; did you mean {meant}?"
UPSIDE_DOWN = "The first number must be the smaller one"
AMBIGUOUS = "{typed} could mean {point} or {joined}. Write {point} or {joined}."
SLASH = "{typed} could be a fraction or two readings. Write a number with a point, or {first}; {second}."
DOTS = "Write a range with two dots, like {low}..{high}"
READINGS = "Give three readings at most"
TOO_LONG = "{label} must be {most} characters at most. You typed {length}."
WORD = "{label} must be one of these: {allowed}. You typed {typed}."
TOOL = "The tool for {fact} must be one of these: {allowed}. You typed {typed}."

JSON_NUMBER = (
    "{label} must be a number, a text like 134..136, null, an object with value and plus_minus or tool, "
    "or an object with low and high. You sent {typed}."
)
JSON_WORD = "{label} must be one of these, a list of them, or null: {allowed}. You sent {typed}."
JSON_BODY = "Send an object with the facts under bike and wish. You sent {typed}."
JSON_SECTION = "The facts under {section} must be an object. You sent {typed}."
JSON_ELSEWHERE = "{name} belongs under {section}."

UNKNOWN_NAME = "There is no fact called {name}."
UNKNOWN_NAME_MEANT = "There is no fact called {name}. Did you mean {meant}?"

CSV_EMPTY = "The first line must name the facts, like dropout_width_mm. This file has none."
CSV_TWICE = "{name} stands over two columns. Keep one."
CSV_CELLS = "This line has {cells} cells and the first line {columns}. Put a number with a comma in quotes."

COASTER_AND_DISC = "A coaster brake and a disc brake can't both be at the rear. Change one."
NOT_BOTH = "{first} is {word} and {second} is given: both can't be. Change one."
TOO_MUCH = "{first} is {word} and {second} is more than {most}: both can't be. Change one."
ABOVE = "{first} is above {second}: both can't be. Change one."


class NotReadError(ValueError):
    """An entry that can't be read; its text is the sentence to show beside it."""


def listed(words: Iterable[str]) -> str:
    """Names one after the other."""
    return ", ".join(words)
