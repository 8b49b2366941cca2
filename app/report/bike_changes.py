"""The changes of a bike that a shop can make for a kit: another rotor, another cassette, another rim.

A change that moves the caliper forgets what was measured of it: only measuring again can prove the fit.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from app.catalogue.catalogue import Catalogue
from app.catalogue.standards import Standards
from app.facts.answers import Answer, Answers, choice, number
from app.facts.fact import ChoiceFact
from app.facts.span import Span
from app.facts.table import FACTS
from app.report.numbers import span_text

ROTOR = "Fit a {size} rotor with its adapter, and measure the caliper again."
FIXING = "Fit a rotor of this kind: {fixing}."
CASSETTE = "Fit a cassette for the {body} body with {speeds} speeds, with its shifter and chain."
WHEEL = "Build the wheel on a rim for {size} bead seats, and check that wheel and tyre clear the frame."
MOVED_BY_ROTOR = (
    "caliper_adapter",
    "caliper_nearest_mm",
    "caliper_bearing_deg",
    "caliper_far_mm",
    "caliper_far_bearing_deg",
    "caliper_inboard_nearest_mm",
)


@dataclass(frozen=True)
class BikeChange:
    """One change, in words, with the facts that are new after it and those that are no longer known."""

    text: str
    new: tuple[Answer, ...]
    forgotten: tuple[str, ...] = ()

    @property
    def facts(self) -> tuple[str, ...]:
        """Every fact that the change touches."""
        return (*(answer.fact for answer in self.new), *self.forgotten)

    def applied_to(self, answers: Answers) -> Answers:
        """The bike after the change."""
        return answers.without(*self.forgotten).with_(*self.new)


def _can_shrink(answers: Answers) -> bool:
    """Post and flat mounts take no rotor smaller than their own; an adapter can come off."""
    on_its_own_mount = answers.words("caliper_adapter") == {"none"}
    return not (on_its_own_mount and answers.words("caliper_mount") <= {"post", "flat"})


def _rotors(answers: Answers, standards: Standards) -> Iterator[BikeChange]:
    has = answers.span("rotor_diameter_mm")
    for row in standards.rotor_sizes:
        size = row.diameter_mm
        if not has.meets(size) and (size.low > has.high or _can_shrink(answers)):
            text = ROTOR.format(size=span_text(size, "mm", 0))
            yield BikeChange(text, (number("rotor_diameter_mm", size),), MOVED_BY_ROTOR)


def _label(name: str, word: str) -> str:
    fact = FACTS[name]
    return fact.label_of(word) if isinstance(fact, ChoiceFact) else word


def _fixings(answers: Answers) -> Iterator[BikeChange]:
    has = answers.words("rotor_fixing")
    for word in ("six_bolt", "center_lock"):
        if word not in has:
            text = FIXING.format(fixing=_label("rotor_fixing", word).lower())
            yield BikeChange(text, (choice("rotor_fixing", {word}),))


def _cassettes(answers: Answers, catalogue: Catalogue, standards: Standards) -> Iterator[BikeChange]:
    has = answers.words("cassette_interface")
    for interface in sorted({freehub.interface for freehub in catalogue.freehubs} - has):
        body = standards.body(interface)
        speeds = max((max(fit.speeds) for fit in body.takes if fit.cassette == interface), default=0)
        if speeds:
            text = CASSETTE.format(body=_label("cassette_interface", interface), speeds=speeds)
            new = (
                choice("cassette_interface", {interface}),
                number("cassette_speeds", _count(speeds)),
                number("smallest_cog", _count(body.smallest_cog)),
            )
            yield BikeChange(text, new, ("largest_cog", "chain_wear"))


def _wheels(answers: Answers, catalogue: Catalogue) -> Iterator[BikeChange]:
    """Only for a bike whose brake doesn't need the rim."""
    has = answers.span("bead_seat_mm")
    for bead_seat in sorted({rim.bead_seat_mm for rim in catalogue.rims}, key=lambda span: span.low):
        if not has.meets(bead_seat):
            text = WHEEL.format(size=span_text(bead_seat, "mm", 0))
            forgotten = ("rim_holes", "rim_inner_width_mm", "rim_erd_mm", "tyre_width_mm")
            yield BikeChange(text, (number("bead_seat_mm", bead_seat),), forgotten)


def _count(whole: int) -> Span:
    return Span.exactly(whole)


def rotor_changes(answers: Answers, standards: Standards) -> list[BikeChange]:
    """Other rotors for a bike with a disc brake; a bike with another brake has none."""
    return [*_rotors(answers, standards)] if answers.words("rear_brake") == {"disc"} else []


def changes_for(answers: Answers, catalogue: Catalogue, standards: Standards) -> list[BikeChange]:
    """All changes that a shop could make to this bike, in a fixed order."""
    disc = answers.words("rear_brake") == {"disc"}
    brakes = [*rotor_changes(answers, standards), *(_fixings(answers) if disc else ())]
    wheels = [*_wheels(answers, catalogue)] if disc else []
    return [*brakes, *_cassettes(answers, catalogue, standards), *wheels]
