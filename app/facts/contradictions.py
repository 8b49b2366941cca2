"""Finds facts that can't both be, such as a coaster brake and a rotor; only where that is certain."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from app.facts.answers import Answers
from app.facts.fact import ChoiceFact
from app.facts.messages import ABOVE, COASTER_AND_DISC, NOT_BOTH, OR, TOO_MUCH
from app.facts.plain_text import cut
from app.facts.reading import FactError, lower_label
from app.facts.shown import plain_number
from app.facts.table import FACTS

SLOTTED = frozenset({"slotted_vertical", "slotted_horizontal", "track_end"})
DISC_OF_FRAME = ("caliper_mount", "caliper_seat", "frame_rotor_limit_mm")
DISC = tuple(name for name in FACTS if name.startswith(("rotor_", "caliper_")) and name not in DISC_OF_FRAME)
THRU_AXLE = tuple(name for name in FACTS if name.startswith("thru_axle_"))
OWN_PACK = tuple(name for name in FACTS if name.startswith("own_pack_"))
OWN_CONTROLLER = tuple(name for name in FACTS if name.startswith("own_controller_"))


@dataclass(frozen=True, slots=True)
class Excludes:
    """Where only these words of a choice are left, none of the other facts can be known."""

    choice: str
    words: frozenset[str]
    others: tuple[str, ...]
    message: str = NOT_BOTH


@dataclass(frozen=True, slots=True)
class AtMost:
    """Where only these words of a choice are left, a number is at most so many thousandths."""

    choice: str
    words: frozenset[str]
    number: str
    most: int


# A frame may carry mounts for a disc brake beside its rim brake, but nobody rides a coaster on such a frame.
EXCLUDES = (
    Excludes("rear_brake", frozenset({"coaster"}), (*DISC_OF_FRAME, *DISC), COASTER_AND_DISC),
    Excludes("rear_brake", frozenset({"rim", "drum", "none"}), DISC),
    Excludes("dropout_kind", frozenset({"thru_axle"}), ("slot_width_mm",)),
    Excludes("dropout_kind", SLOTTED, THRU_AXLE),
    Excludes("pack_present", frozenset({"no"}), OWN_PACK),
    Excludes("controller_present", frozenset({"no"}), OWN_CONTROLLER),
)
AT_MOST = (
    AtMost("dropout_kind", SLOTTED, "socket_depth_mm", 0),
    AtMost("drivetrain", frozenset({"single_speed"}), "cassette_speeds", 1000),
)
RISING = (
    ("thru_axle_thread_length_mm", "thru_axle_length_mm"),
    ("caliper_nearest_mm", "caliper_far_mm"),
    ("smallest_cog", "largest_cog"),
    ("smallest_chainring", "largest_chainring"),
    ("stay_clear_from_mm", "stay_clear_to_mm"),
    ("own_pack_nominal_v", "own_pack_full_v"),
)


def contradictions(answers: Answers) -> tuple[FactError, ...]:
    """One error for each two facts that can't both be, whatever the readings' uncertainty."""
    return (*_excluded(answers), *_too_much(answers), *_falling(answers))


def _excluded(answers: Answers) -> Iterator[FactError]:
    for each in EXCLUDES:
        given = next((name for name in each.others if answers.is_known(name)), None)
        if given and _only(answers, each.choice, each.words):
            yield _error(answers, each.choice, given, each.message)


def _too_much(answers: Answers) -> Iterator[FactError]:
    for each in AT_MOST:
        certain = answers.is_known(each.number) and answers.span(each.number).low > each.most
        if certain and _only(answers, each.choice, each.words):
            yield _error(answers, each.choice, each.number, TOO_MUCH, most=plain_number(each.most))


def _falling(answers: Answers) -> Iterator[FactError]:
    for lower, upper in RISING:
        both = answers.is_known(lower) and answers.is_known(upper)
        if both and answers.span(lower).low > answers.span(upper).high:
            yield _error(answers, lower, upper, ABOVE)


def _only(answers: Answers, choice: str, words: frozenset[str]) -> bool:
    return answers.is_known(choice) and answers.words(choice) <= words


def _error(answers: Answers, first: str, second: str, message: str, most: str = "") -> FactError:
    text = message.format(
        first=FACTS[first].label, word=_words(answers, first), second=lower_label(FACTS[second]), most=most
    )
    return FactError(first, cut(answers[first].typed), text, also=second)


def _words(answers: Answers, name: str) -> str:
    fact = FACTS[name]
    if not isinstance(fact, ChoiceFact):
        return ""
    labels = [fact.label_of(word.word) for word in fact.words if word.word in answers.words(name)]
    return OR.join(label[0].lower() + label[1:] for label in labels)
