"""A rule is asked once for the parts that it reads, with every word that is still possible."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from app.catalogue.hub_parts import Hub
from app.facts.answers import Answers, choice, number
from app.facts.bike import Bike
from app.facts.span import Span
from app.facts.truth import Truth
from app.rules.check import Check, Given, Inapplicable, of_part
from app.rules.evaluate import Bench
from app.rules.outcome import Outcome, Weight
from app.rules.rule import PRACTICE, Rule, Says, rule
from tests.demo import demo_catalogue, demo_standards

SAYS = Says(passed="So.", failed="Not so.", not_known="Look.", remedy="Change it.")


def made(*settled_by: str) -> Callable[[Callable[..., Given]], Rule]:
    """Makes a function into a rule whose words don't matter."""
    return rule(
        title="A rule for tests",
        weight=Weight.BLOCKS,
        applies="Always.",
        expects="Something.",
        assumes="Nothing.",
        source=PRACTICE,
        says=SAYS,
        settled_by=settled_by,
    )


def bench(asked: Rule, answers: Answers) -> Bench:
    return Bench(asked, answers, demo_catalogue(), demo_standards())


def test_asking_about_the_same_parts_again_costs_nothing() -> None:
    asked: list[str] = []

    @made()
    def counts(hub: Hub) -> Check:
        asked.append(hub.id)
        return Check.of_truth(Truth.YES)

    weir = demo_catalogue().hubs[-1]
    on_bike = bench(counts, Answers())

    on_bike.result((weir,))
    on_bike.result((weir,))

    assert asked == [weir.id]


def test_a_rule_sees_each_word_that_is_still_possible() -> None:
    seen: list[str] = []

    @made("rear_brake")
    def looks(bike: Bike) -> Check:
        seen.append(bike.rear_brake)
        return Check.of_truth(Truth.of(yes=bike.rear_brake == "disc"))

    result = bench(looks, Answers({"rear_brake": choice("rear_brake", {"disc", "rim"})})).result(())

    assert seen == ["disc", "rim"]
    assert (result.outcome, result.tried) == (Outcome.CANT_TELL, ("rear_brake",))


def test_a_choice_is_not_tried_where_the_rule_does_not_come_to_it() -> None:
    asked: list[str] = []

    @made("rear_brake", "caliper_mount")
    def looks(bike: Bike) -> Given:
        asked.append(bike.rear_brake)
        if bike.rear_brake != "disc":
            return Inapplicable("No disc.")
        return Check.of_truth(Truth.of(yes=bike.caliper_mount == "post"))

    result = bench(looks, Answers({"rear_brake": choice("rear_brake", {"rim"})})).result(())

    assert asked == ["rim"]
    assert result.tried == ()


def test_it_tells_which_numbers_a_rule_looked_at() -> None:
    @made("slot_width_mm", "dropout_width_mm")
    def looks(bike: Bike) -> Check:
        return Check(reading=bike.slot_width_mm, unit="mm", low=of_part(Span.exactly(10)))

    on_bike = bench(looks, Answers({"slot_width_mm": number("slot_width_mm", Span.exactly(10))}))

    assert on_bike.numbers_read((), on_bike.result(())) == ("slot_width_mm",)


def test_a_rule_that_names_what_nobody_hands_in_is_refused_when_it_is_made() -> None:
    with pytest.raises(ValueError, match="saddle"):

        @made()
        def strange(saddle: str) -> Check:
            return Check.of_truth(Truth.of(yes=bool(saddle)))


def test_a_rule_that_crashes_is_a_bug_and_shows_as_one() -> None:
    @made()
    def broken(hub: Hub) -> Check:
        return Check.of_truth(Truth.of(yes=1 // hub.spoke_holes.imag == 1))

    with pytest.raises(ZeroDivisionError):
        bench(broken, Answers()).result((demo_catalogue().hubs[0],))
