"""How outcomes are read off numbers, truths and mixtures of words."""

from __future__ import annotations

from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from app.catalogue.provenance import Provenance
from app.facts.span import Span
from app.facts.truth import Truth
from app.rules.check import Check, Inapplicable, Limit, habit, of_part
from app.rules.outcome import Outcome, Result, Weight, decide, join, margin, relative_margin

LOW, HIGH = of_part(Span.exactly(135)), of_part(Span.exactly(136))


def outcome_of(reading: Span) -> Outcome:
    return decide(Check(reading=reading, unit="mm", low=LOW, high=HIGH), Weight.BLOCKS).outcome


@pytest.mark.parametrize(
    ("reading", "outcome"),
    [
        pytest.param(Span.around("135.4", "0.3"), Outcome.PASSED, id="135.4 ± 0.3 lies inside"),
        pytest.param(
            Span.around("135.5", "0.5"), Outcome.PASSED, id="135.5 ± 0.5 has both ends on the limits"
        ),
        pytest.param(
            Span.around("134.6", "0.5"), Outcome.CANT_TELL, id="134.6 ± 0.5 has its last 0.1 inside"
        ),
        pytest.param(Span.around("134.6", "0.4"), Outcome.CANT_TELL, id="134.6 ± 0.4 touches 135.0"),
        pytest.param(Span.around("134.6", "0.3"), Outcome.FAILED, id="134.6 ± 0.3 is 134.9 at most"),
        pytest.param(Span.between(134, 137), Outcome.CANT_TELL, id="134 to 137 is wider than the limits"),
        pytest.param(Span.between(80, 220), Outcome.CANT_TELL, id="not known is the widest the trade allows"),
        pytest.param(Span.exactly("136.001"), Outcome.FAILED, id="one thousandth over"),
    ],
)
def test_a_reading_is_decided_as_the_table_of_decisions_says(reading: Span, outcome: Outcome) -> None:
    assert outcome_of(reading) is outcome


def test_no_binary_fraction_moves_a_limit() -> None:
    gap = Span.exactly("128.3") - Span.exactly("127.3")

    result = decide(Check(reading=gap, unit="mm", high=of_part(Span.exactly(1))), Weight.BLOCKS)

    assert 128.3 - 127.3 > 1.0
    assert result.outcome is Outcome.PASSED


def test_a_limit_that_says_below_does_not_hold_its_own_end() -> None:
    below = Limit(Span.exactly(750), Provenance.PUBLISHED, excluded=True)

    at_the_end = decide(Check(reading=Span.exactly(750), unit="W", high=below), Weight.CAUTIONS)
    under_it = decide(Check(reading=Span.exactly("749.999"), unit="W", high=below), Weight.CAUTIONS)

    assert (at_the_end.outcome, under_it.outcome) == (Outcome.FAILED, Outcome.PASSED)


def test_a_limit_with_a_tolerance_leaves_the_middle_open() -> None:
    limit = of_part(Span.around(20, "0.5"))

    outcomes = [
        decide(Check(reading=Span.exactly(at), low=limit), Weight.BLOCKS).outcome for at in (19, 20, 21)
    ]

    assert outcomes == [Outcome.FAILED, Outcome.CANT_TELL, Outcome.PASSED]


@pytest.mark.parametrize("provenance", list(Provenance))
def test_only_a_firm_source_can_stop_a_fit(provenance: Provenance) -> None:
    weak = {Provenance.PRACTICE, Provenance.MEMORY, Provenance.ESTIMATE}

    result = decide(Check(reading=Span(0, 0), low=Limit(Span(1, 1), provenance)), Weight.BLOCKS)

    assert result.outcome is Outcome.FAILED
    assert result.weight is (Weight.CAUTIONS if provenance in weak else Weight.BLOCKS)


def test_a_weak_limit_on_the_other_side_does_not_soften_a_firm_one() -> None:
    check = Check(reading=Span(0, 0), low=of_part(Span(1, 1)), high=habit(5))

    assert decide(check, Weight.BLOCKS).weight is Weight.BLOCKS


def test_a_rule_to_know_never_stops_a_fit() -> None:
    check = Check(reading=Span(0, 0), low=of_part(Span(1, 1)))

    assert decide(check, Weight.CAUTIONS).weight is Weight.CAUTIONS


def settled(outcome: Outcome) -> Result:
    truths = {Outcome.PASSED: Truth.YES, Outcome.FAILED: Truth.NO, Outcome.CANT_TELL: Truth.UNKNOWN}
    given_back = Check.of_truth(truths[outcome]) if outcome in truths else Inapplicable("No.")
    return Result(outcome, Weight.BLOCKS, given_back)


@pytest.mark.parametrize(
    ("outcomes", "joined"),
    [
        ((Outcome.PASSED, Outcome.PASSED), Outcome.PASSED),
        ((Outcome.FAILED, Outcome.FAILED), Outcome.FAILED),
        ((Outcome.PASSED, Outcome.FAILED), Outcome.CANT_TELL),
        ((Outcome.INAPPLICABLE, Outcome.PASSED), Outcome.PASSED),
        ((Outcome.INAPPLICABLE, Outcome.FAILED), Outcome.CANT_TELL),
        ((Outcome.INAPPLICABLE, Outcome.CANT_TELL), Outcome.CANT_TELL),
        ((Outcome.INAPPLICABLE, Outcome.INAPPLICABLE), Outcome.INAPPLICABLE),
    ],
)
def test_several_possible_words_are_joined(outcomes: tuple[Outcome, ...], joined: Outcome) -> None:
    result = join([settled(outcome) for outcome in outcomes], ("rear_brake",))

    assert result.outcome is joined
    assert result.tried == ("rear_brake",)


def test_a_caution_for_one_word_does_not_hide_a_stop_for_another() -> None:
    caution = settled(Outcome.FAILED)._replace(weight=Weight.CAUTIONS)

    result = join([caution, settled(Outcome.FAILED), settled(Outcome.PASSED)], ("frame_material",))

    assert (result.outcome, result.weight) == (Outcome.CANT_TELL, Weight.BLOCKS)


@given(st.integers(-5000, 5000), st.integers(0, 3000))
def test_the_margin_is_what_is_in_hand_at_worst_or_short_at_best(low: int, width: int) -> None:
    reading = Span(134_000 + low, 134_000 + low + width)
    result = decide(Check(reading=reading, unit="mm", low=LOW, high=HIGH), Weight.BLOCKS)

    room = margin(result)

    assert room is not None
    if result.outcome is Outcome.PASSED:
        assert room == min(reading.low - 135_000, 136_000 - reading.high) >= 0
    elif result.outcome is Outcome.FAILED:
        assert room == min(reading.high - 135_000, 136_000 - reading.low) < 0


def test_the_relative_margin_compares_rules_of_unlike_units() -> None:
    result = decide(Check(reading=Span.exactly("135.25"), unit="mm", low=LOW, high=HIGH), Weight.BLOCKS)

    assert relative_margin(result) == float(Decimal("0.25"))


def test_one_limit_alone_has_no_relative_margin() -> None:
    result = decide(Check(reading=Span.exactly(140), unit="mm", low=LOW), Weight.BLOCKS)

    assert relative_margin(result) is None
