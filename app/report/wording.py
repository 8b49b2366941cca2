"""Puts the numbers of a result into the sentences of its rule. Rules have the words, checks the numbers."""

from __future__ import annotations

import re
from collections.abc import Mapping

from app.facts.span import THOUSAND, Span
from app.facts.table import FACTS
from app.report.numbers import MOST_PLACES, PLACES, THIN, places_needed, shown, span_text, unit_of, with_unit
from app.rules.check import Check, Inapplicable, Missing
from app.rules.outcome import Outcome, Result, Weight, decide, margin
from app.rules.rule import Rule

IN_HAND = " At worst {margin} in hand."

WORDS: Mapping[str, str] = {
    "fit": "Fits",
    "care": "Take care",
    "close": "Too close to call",
    "open": "Not known yet",
    "gap": "Kit data missing",
    "no": "Doesn't fit",
    "skip": "Doesn't apply",
}

_KIND_NAMES = {
    "hub": "hub",
    "winding": "winding",
    "axle_set": "axle set",
    "torque_arm": "torque arm",
    "freehub": "freehub",
    "controller": "controller",
    "pack": "pack",
    "sensor": "sensor",
    "rim": "rim",
    "adapter": "adapter",
    "spacer": "spacer",
}
# Where the name of a value in the catalogue is not what a maker calls it.
_VALUE_NAMES = {
    "slot_needs": "axle end's width across",
    "thru_pitches": "thread pitches that it takes",
    "thru_heads": "axle heads that it takes",
    "under_head": "thickness under the axle's head",
    "flat_face_radius": "radius that must lie flat",
    "rotor_seat": "place of the rotor seat",
    "shell_face": "place of the motor shell",
    "right_stack": "length of what lies on the right of the axle",
    "cover_radius": "radius where the rim of the motor's cover begins",
    "cover_face": "height of the rim of the motor's cover",
    "largest_cog_face": "place of the largest cog",
    "smallest_cog_face": "place of the smallest cog",
    "flange_left_pcd": "circle of the left flange's spoke holes",
    "flange_left": "place of the left flange",
    "spoke_heads_left": "side of the left flange that the spoke heads lie on",
    "reads": "pedal sensors that it reads",
    "bar_lead": "length of the lead to the handlebar",
    "largest_total_mass": "largest total mass",
    "pulses_per_turn": "number of pulses in a turn",
    "edges_per_pulse": "number of edges it counts for a pulse",
    "holds_braking": "directions of hold",
    "swivel_in_plane": "clamp's swivel up and down",
    "swivel_across": "clamp's swivel to the sides",
    "offset_low": "clamp's reach above and below the axle",
    "lateral_low": "clamp's reach to the side",
    "clamp_width_low": "clamp's width",
    "clamp_height_low": "clamp's height",
    "fastening": "kind of anchor",
    "pole_pairs": "number of pole pairs",
}
WHATEVER = "Passes whatever the answer: {labels}."
GAP = "The maker hasn't given the {value} of this {kind}."


def state_of(result: Result, open_facts: tuple[str, ...]) -> str:
    """Which of the seven gauge marks a result gets."""
    if result.outcome is Outcome.PASSED:
        return "fit"
    if result.outcome is Outcome.INAPPLICABLE:
        return "skip"
    if result.outcome is Outcome.FAILED:
        return "no" if result.weight is Weight.BLOCKS else "care"
    if isinstance(result.given, Missing):
        return "gap"
    return "open" if open_facts else "close"


# "134.0 mm to 137.0 mm" says its unit twice.
_SHARED_UNIT = re.compile(rf"(\d){THIN}(\S+) to (−?[\d.]+{THIN}\2)(?=[\s,.;:)]|$)")


def say(template: str, numbers: Mapping[str, str]) -> str:
    """A sentence with its numbers; a unit that two numbers share stands once, behind the second."""
    text = template.format_map(numbers)
    return _SHARED_UNIT.sub(r"\1 to \3", text) if " to " in text else text


def _contradicts(check: Check, result: Result, places: int) -> bool:
    """Whether the reading, rounded outward to so many places, would be judged otherwise than it was."""
    assert check.reading is not None  # noqa: S101 - only asked of checks with numbers
    step = 10 ** (MOST_PLACES - places)
    low, high = check.reading.low // step * step, -(-check.reading.high // step) * step
    seen = Check(reading=Span(low, high), low=check.low, high=check.high)
    return decide(seen, result.weight).outcome is not result.outcome


def places_for(check: Check, result: Result) -> int:
    """The limit's places, or as many more as keep the printed reading on its side of the limit."""
    places = 0 if _is_whole(check) else PLACES.get(check.unit, 0)
    for limit in (check.low, check.high):
        if limit is not None:
            places = max(
                places, places_needed(limit.value.low, places), places_needed(limit.value.high, places)
            )
    while not result.tried and places < MOST_PLACES and _contradicts(check, result, places):
        places += 1
    return places


def _whole(span: Span | str | None) -> bool:
    return not isinstance(span, Span) or not (span.low % THOUSAND or span.high % THOUSAND)


def _is_whole(check: Check) -> bool:
    """Whether no number of a check has anything behind the point, so that none is shown."""
    limits = [limit.value for limit in (check.low, check.high) if limit is not None]
    return _whole(check.reading) and all(map(_whole, limits)) and all(map(_whole, check.values.values()))


class Numbers(dict[str, str]):
    """What the braces of a rule's sentences stand for; each is put into words when a sentence asks for it."""

    def __init__(self, check: Check, result: Result) -> None:
        super().__init__()
        self._check, self._result = check, result
        self._places = None if check.reading is None else places_for(check, result)

    def __missing__(self, name: str) -> str:
        text = self[name] = self._text(name)
        return text

    def _text(self, name: str) -> str:
        check = self._check
        if name in check.values:
            value = check.values[name]
            least = 0 if _is_whole(check) else None
            return value if isinstance(value, str) else span_text(value, unit_of(name), least)
        if self._places is None or check.reading is None:
            raise KeyError(name)
        if name == "reading":
            return span_text(check.reading, check.unit, self._places)
        return self._margin(self._places) if name == "margin" else self._limit(name, self._places)

    def _limit(self, name: str, places: int) -> str:
        limit = {"low": self._check.low, "high": self._check.high}[name]
        if limit is None:
            raise KeyError(name)
        return span_text(limit.value, self._check.unit, places)

    def _margin(self, places: int) -> str:
        """Rounded down, but never to nothing where there is something."""
        room = margin(self._result) or 0
        by = places if abs(room) >= 10 ** (MOST_PLACES - places) else places_needed(room, places)
        return with_unit(shown(abs(room), by, "down"), self._check.unit)


def numbers_of(result: Result) -> Numbers:
    """The numbers of a result that has some: those with constant sentences are an AssertionError."""
    check = result.given
    assert isinstance(check, Check)  # noqa: S101 - the other answers have constant sentences
    return Numbers(check, result)


def too_high(check: Check) -> bool:
    """Whether a failed reading lies above its upper limit rather than below its lower one."""
    return check.reading is not None and check.high is not None and check.reading.low > check.high.value.low


def gap_sentence(missing: Missing) -> str:
    """Which value of which part the maker still owes."""
    name, unit = missing.field, unit_of(missing.field)
    bare = name.rpartition("_")[0] if unit else name
    value = _VALUE_NAMES.get(bare, bare.replace("_", " "))
    kind = getattr(missing.part, "kind", "part")
    return GAP.format(value=value, kind=_KIND_NAMES.get(kind, "part"))


def states_sentence(rule: Rule) -> str:
    """What the reading and the limits are, without a verdict."""
    return rule.says.passed.removesuffix(IN_HAND)


def sentence_of(rule: Rule, result: Result, state: str) -> str:
    """The sentence of a finding, without its verdict's words; for a close call without the advice."""
    given = result.given
    if isinstance(given, Inapplicable):
        return given.because
    if isinstance(given, Missing):
        return gap_sentence(given)
    if state == "open":
        return rule.says.not_known
    if result.tried and result.outcome is Outcome.PASSED:
        return WHATEVER.format(labels=", ".join(FACTS[name].label for name in result.tried))
    numbers = numbers_of(result)
    if state == "close":
        return say(states_sentence(rule), numbers)
    if result.outcome is Outcome.PASSED:
        return say(rule.says.passed, numbers)
    high_side = too_high(given) and rule.says.failed_high
    return say(rule.says.failed_high if high_side else rule.says.failed, numbers)


def remedy_of(rule: Rule, result: Result) -> str:
    """What would make it fit; nothing where it does."""
    given = result.given
    if result.outcome is not Outcome.FAILED or not isinstance(given, Check):
        return ""
    words = rule.says.remedy_high if too_high(given) and rule.says.remedy_high else rule.says.remedy
    return say(words, numbers_of(result))
