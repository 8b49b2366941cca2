"""The table of facts is the one place where a fact is described, and it leaves nothing out."""

from __future__ import annotations

import pytest

from app.facts.bike import Bike, Wish
from app.facts.fact import ChoiceFact, Fact, Group, NumberFact
from app.facts.table import FACTS

KIND = {NumberFact: "Span", ChoiceFact: "str"}
NUMBERS = [fact for fact in FACTS.values() if isinstance(fact, NumberFact)]
CHOICES = [fact for fact in FACTS.values() if isinstance(fact, ChoiceFact)]


def in_table(*, of_wish: bool) -> dict[str, str]:
    return {name: KIND[type(fact)] for name, fact in FACTS.items() if (fact.group is Group.WISH) is of_wish}


def by_name(fact: Fact) -> str:
    return fact.name


@pytest.mark.parametrize(("view", "of_wish"), [(Bike, False), (Wish, True)])
def test_a_rule_can_read_each_fact_of_the_table_in_its_order(view: type, *, of_wish: bool) -> None:
    table = in_table(of_wish=of_wish)

    assert list(table.items()) == list(view.__annotations__.items())


def test_letters_count_through_each_group() -> None:
    expected = [
        f"{letter}{place}"
        for letter, group in zip("ABCDEFG", Group, strict=True)
        for place in range(1, 1 + sum(fact.group is group for fact in FACTS.values()))
    ]

    assert [fact.letter for fact in FACTS.values()] == expected


def test_no_two_facts_share_a_label() -> None:
    labels = [fact.label for fact in FACTS.values()]

    assert len(set(labels)) == len(labels)


@pytest.mark.parametrize("fact", FACTS.values(), ids=by_name)
def test_a_fact_says_how_it_is_asked_and_taken(fact: Fact) -> None:
    assert fact.name in FACTS
    assert fact.question.endswith("?")
    assert fact.how_measured.endswith(".")
    assert 5 <= fact.effort_s <= 900
    assert fact.label[0].isupper()
    assert not fact.label.endswith(".")


@pytest.mark.parametrize("fact", NUMBERS, ids=by_name)
def test_usual_values_of_a_number_lie_inside_what_can_be(fact: NumberFact) -> None:
    assert fact.can_be.holds(fact.usual)
    assert fact.can_be != fact.usual


@pytest.mark.parametrize("fact", NUMBERS, ids=by_name)
def test_a_name_ends_in_its_unit(fact: NumberFact) -> None:
    suffix = {"°": "deg", "%": "pct", "°C": "c", "km/h": "kmh", "m/s": "ms", "min": "minutes"}

    assert fact.whole or fact.name.endswith("_" + suffix.get(fact.unit, fact.unit.lower()))


@pytest.mark.parametrize("fact", NUMBERS, ids=by_name)
def test_tools_have_names_of_their_own_and_none_claims_better_than_it_reads(fact: NumberFact) -> None:
    names = [tool.name for tool in fact.tools]

    assert names
    assert len(set(names)) == len(names)
    assert all(0 <= tool.best <= tool.plus_minus for tool in fact.tools)


@pytest.mark.parametrize("fact", NUMBERS, ids=by_name)
def test_a_count_is_exact(fact: NumberFact) -> None:
    exact = (fact.unit, fact.decimals, [tool.plus_minus for tool in fact.tools]) == ("", 0, [0])

    assert exact is fact.whole


@pytest.mark.parametrize("fact", CHOICES, ids=by_name)
def test_each_word_is_chosen_by_a_key_of_its_own_that_its_label_shows(fact: ChoiceFact) -> None:
    keys = [word.key for word in fact.words]

    assert len(set(keys)) == len(keys) >= 2
    assert all(word.key.isalnum() and word.key in word.label.lower() for word in fact.words)
    assert fact.all_words == {word.word for word in fact.words}


def test_a_tape_reads_the_dropouts_to_a_millimetre_and_calipers_to_three_tenths() -> None:
    width = FACTS["dropout_width_mm"]

    assert isinstance(width, NumberFact)
    assert width.tool("rule or tape").plus_minus == 1000
    assert width.tool("calipers").plus_minus == 300
    assert width.tool("").name == "calipers"
