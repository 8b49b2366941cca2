"""Sentences say the numbers of their finding, rounded so that they never contradict its verdict."""

from __future__ import annotations

import re

import pytest
from hypothesis import given
from hypothesis import strategies as st

from app.facts.answers import Answers, number
from app.facts.span import Span
from app.report.closer import advice
from app.report.numbers import THIN, shown, span_text
from app.report.wording import IN_HAND, numbers_of, remedy_of, say, sentence_of, state_of
from app.rules.check import Check, Missing, of_part
from app.rules.evaluate import Bench
from app.rules.outcome import Outcome, Result, Weight, decide
from app.rules.register import REGISTER
from app.rules.rule import PART_DATA, Rule, Says, rule
from tests.demo import demo_catalogue, demo_standards
from tests.report.bikes import BIKES, report_on

LOW, HIGH = Span.exactly(135), Span.exactly(136)


@rule(
    title="Dropouts suit the axle set",
    weight=Weight.BLOCKS,
    applies="Always.",
    expects="A width.",
    assumes="Nothing.",
    source=PART_DATA,
    settled_by=("dropout_width_mm",),
    says=Says(
        passed="Dropouts {reading}; this axle set takes {low} to {high}. At worst {margin} in hand.",
        failed="Dropouts {reading}; this axle set takes {low} to {high}. At best {margin} too narrow.",
        failed_high="Dropouts {reading}; this axle set takes {low} to {high}. At best {margin} too wide.",
        not_known="Measure the dropouts.",
        remedy="Take a narrower axle set.",
        remedy_high="Take a wider axle set.",
    ),
)
def width(bike):  # type: ignore[no-untyped-def]  # noqa: ANN001, ANN201 - a rule as small as can be
    """The width against two limits."""
    return Check(reading=bike.dropout_width_mm, unit="mm", low=of_part(LOW), high=of_part(HIGH))


def result_for(reading: Span) -> Result:
    return decide(Check(reading=reading, unit="mm", low=of_part(LOW), high=of_part(HIGH)), Weight.BLOCKS)


def said(reading: Span) -> str:
    result = result_for(reading)
    return sentence_of(width, result, state_of(result, ())).replace(THIN, " ")


def test_a_fit_says_reading_limits_and_what_is_in_hand() -> None:
    assert said(Span.around("135.4", "0.3")) == (
        "Dropouts 135.4 mm ± 0.3; this axle set takes 135.0 to 136.0 mm. At worst 0.1 mm in hand."
    )


def test_a_failure_says_how_much_is_missing_at_best() -> None:
    assert said(Span.around("133.6", "0.3")) == (
        "Dropouts 133.6 mm ± 0.3; this axle set takes 135.0 to 136.0 mm. At best 1.1 mm too narrow."
    )


def test_too_much_reads_otherwise_than_too_little() -> None:
    too_wide = result_for(Span.exactly(140))

    assert said(Span.exactly(140)).endswith("135 to 136 mm. At best 4 mm too wide.")
    assert remedy_of(width, too_wide) == "Take a wider axle set."


def test_a_close_call_says_which_tool_and_which_readings_settle_it() -> None:
    answers = Answers({"dropout_width_mm": number("dropout_width_mm", Span.around("134.6", "0.5"))})
    bench = Bench(width, answers, demo_catalogue(), demo_standards())

    text = f"{said(Span.around('134.6', '0.5'))} {advice(bench, answers, bench.result(()), ())}"

    assert text.replace(THIN, " ") == (
        "Dropouts 134.6 mm ± 0.5; this axle set takes 135.0 to 136.0 mm. "
        "With calipers (± 0.3), 135.3 to 135.7 is a fit, below 134.7 or above 136.3 mm is not."
    )


@given(st.integers(134_000, 136_900), st.integers(301, 1500))
def test_the_readings_that_would_settle_a_close_call_do_settle_it(middle: int, half: int) -> None:
    answers = Answers({"dropout_width_mm": number("dropout_width_mm", Span(middle - half, middle + half))})
    bench = Bench(width, answers, demo_catalogue(), demo_standards())
    result = bench.result(())
    if result.outcome is not Outcome.CANT_TELL:
        return

    numbers = [float(text) for text in re.findall(r"\d{3}\.\d", advice(bench, answers, result, ()))]

    first, last, below, above = (round(text * 1000) for text in numbers)
    outcomes = [result_for(Span(at - 300, at + 300)).outcome for at in (first, last, below - 1, above + 1)]
    assert outcomes == [Outcome.PASSED, Outcome.PASSED, Outcome.FAILED, Outcome.FAILED]


@given(st.integers(133_000, 138_000), st.integers(0, 900))
def test_rounding_never_makes_a_reading_look_better_or_worse_than_it_was_judged(low: int, span: int) -> None:
    result = result_for(Span(low, low + span))

    text = numbers_of(result)["reading"].replace(THIN, " ")

    found = [round(float(number_text) * 1000) for number_text in re.findall(r"\d+(?:\.\d+)?", text)]
    ends = (found[0] - found[1], found[0] + found[1]) if "±" in text else (found[0], found[-1])
    assert result_for(Span(*ends)).outcome is result.outcome


def test_a_missing_value_names_the_part_that_lacks_it() -> None:
    axle_set = demo_catalogue().axle_sets[0]

    sentence = sentence_of(width, decide(Missing(axle_set, "axle_length_mm"), Weight.BLOCKS), "gap")

    assert sentence == "The maker hasn't given the axle length of this axle set."


@pytest.mark.parametrize(
    ("span", "text"),
    [
        (Span.exactly(142), "142.0 mm"),
        (Span.around("134.6", "0.3"), "134.6 mm ± 0.3"),
        (Span.between(134, 137), "134.0 to 137.0 mm"),
        (Span.exactly("18.75"), "18.75 mm"),
        (Span.between("-2.251", "-0.551"), "−2.3 to −0.5 mm"),
    ],
)
def test_a_span_is_read_out_outward_rounded(span: Span, text: str) -> None:
    assert span_text(span, "mm").replace(THIN, " ") == text


def test_halves_round_away_from_nothing() -> None:
    assert (shown(1250, 1), shown(-1250, 1)) == ("1.3", "−1.3")


def test_a_unit_that_two_numbers_share_stands_once() -> None:
    sentence = say("takes {a} to {b}, not {a}.", {"a": f"134.0{THIN}mm", "b": f"137.0{THIN}mm"})

    assert sentence == f"takes 134.0 to 137.0{THIN}mm, not 134.0{THIN}mm."


@pytest.mark.parametrize("asked", REGISTER, ids=lambda each: each.id)
def test_what_is_in_hand_is_a_sentence_of_its_own(asked: Rule) -> None:
    """So that a close call can be stated without it."""
    passed = asked.says.passed

    assert "{margin}" not in passed or passed.endswith(IN_HAND)


BANNED = re.compile(
    r"\b(please|sorry|invalid|valid|illegal|forbidden|oops|error occurred|field|input|required|submit"
    r"|click here|simply|just)\b",
    re.IGNORECASE,
)


@pytest.mark.parametrize("name", BIKES)
def test_no_sentence_of_a_report_uses_a_banned_word_or_an_open_brace(name: str) -> None:
    report = report_on(name)
    texts = [
        each.sentence + each.remedy + each.title for shown_ in report.combinations for each in shown_.findings
    ]
    texts += [*report.cautions, report.sentence, *(ask.advice for ask in report.ask_next)]

    for text in texts:
        assert not BANNED.search(text), text
        assert "{" not in text
