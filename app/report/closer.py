"""What a better reading would settle, where the present one lies across a limit."""

from __future__ import annotations

from dataclasses import dataclass

from app.catalogue.part import Part
from app.facts.answers import Answers, number
from app.facts.fact import NumberFact, Tool
from app.facts.span import Span
from app.facts.table import FACTS
from app.report.numbers import places_needed, shown, with_unit
from app.rules.check import Check
from app.rules.evaluate import Bench
from app.rules.outcome import Result

BETWEEN = (
    "With {tool} (± {by}), {fit_from} to {fit_to} is a fit, below {no_below} or above {no_above} is not."
)
AT_LEAST = "With {tool} (± {by}), {fit_from} or more is a fit, below {no_below} is not."
AT_MOST = "With {tool} (± {by}), {fit_to} or less is a fit, above {no_above} is not."
NEVER = "No reading with {tool} (± {by}) can prove a fit here."
AGAIN = "Measure again with {tool} (± {by}): {label}."
AS_GOOD_AS_IT_GETS = "The best tool for it was used. The maker or the shop has to decide."


@dataclass(frozen=True, slots=True)
class Line:
    """A reading that follows one fact in a straight line: reading = start + slope × fact, ± half."""

    start: int
    slope: int
    half: int


def _better(answers: Answers, names: tuple[str, ...]) -> tuple[NumberFact, Tool] | None:
    """The known fact with most to gain from its best tool."""
    best: tuple[int, NumberFact, Tool] | None = None
    for name in names:
        fact = FACTS[name]
        if isinstance(fact, NumberFact) and answers.is_known(name):
            gain = answers.span(name).width - 2 * fact.tools[0].plus_minus
            if gain > 0 and (best is None or gain > best[0]):
                best = (gain, fact, fact.tools[0])
    return None if best is None else best[1:]


def _reading_at(
    bench: Bench, answers: Answers, fact: NumberFact, value: int, parts: tuple[Part, ...]
) -> Span | None:
    given = bench.with_answers(answers.with_(number(fact.name, Span(value, value)))).result(parts).given
    return given.reading if isinstance(given, Check) else None


def _line(bench: Bench, answers: Answers, fact: NumberFact, parts: tuple[Part, ...]) -> Line | None:
    """The straight line through the present span's ends, if its middle lies on it too."""
    span = answers.span(fact.name)
    at = (span.low, (span.low + span.high) // 2, span.high)
    readings = [_reading_at(bench, answers, fact, value, parts) for value in at]
    first, middle, last = readings
    if first is None or middle is None or last is None or span.is_exact:
        return None
    slope, rest = divmod(last.low - first.low, span.width)
    straight = first.width == middle.width == last.width and middle.low - first.low == slope * (at[1] - at[0])
    if rest or slope == 0 or not straight:
        return None
    half, odd = divmod(first.width, 2)
    return Line(first.low + half - slope * span.low, slope, half + odd)


def _texts(line: Line, check: Check, fact: NumberFact, tool: Tool) -> dict[str, str]:
    """The values of the fact at which the verdict turns, as text."""
    blur = line.half + abs(line.slope) * tool.plus_minus
    ends: dict[str, int] = {}
    low, high = (check.low, check.high) if line.slope > 0 else (check.high, check.low)
    sign = 1 if line.slope > 0 else -1
    if low is not None:
        ends["fit_from"] = -(
            -((low.value.high if sign > 0 else low.value.low) + sign * blur - line.start) // line.slope
        )
        ends["no_below"] = (
            (low.value.low if sign > 0 else low.value.high) - sign * blur - line.start
        ) // line.slope
    if high is not None:
        ends["fit_to"] = (
            (high.value.low if sign > 0 else high.value.high) - sign * blur - line.start
        ) // line.slope
        ends["no_above"] = -(
            -((high.value.high if sign > 0 else high.value.low) + sign * blur - line.start) // line.slope
        )
    texts = {name: shown(value, places_needed(value, fact.decimals)) for name, value in ends.items()}
    if "fit_from" in ends and "fit_to" in ends and ends["fit_from"] > ends["fit_to"]:
        texts["never"] = "yes"
    last = "no_above" if high is not None else "no_below"
    texts[last] = with_unit(texts[last], fact.unit)
    return texts


def _template(texts: dict[str, str]) -> str:
    if "never" in texts:
        return NEVER
    if "fit_from" in texts:
        return BETWEEN if "fit_to" in texts else AT_LEAST
    return AT_MOST


def advice(bench: Bench, answers: Answers, result: Result, parts: tuple[Part, ...]) -> str:
    """Which tool, and which readings with it, would settle a close call."""
    better = _better(answers, bench.numbers_read(parts, result))
    if better is None:
        return AS_GOOD_AS_IT_GETS
    fact, tool = better
    by = shown(tool.plus_minus, places_needed(tool.plus_minus, fact.decimals))
    line = None if result.tried else _line(bench, answers, fact, parts)
    if line is None or not isinstance(result.given, Check):
        return AGAIN.format(tool=tool.name, by=by, label=fact.label)
    texts = _texts(line, result.given, fact, tool)
    return _template(texts).format(tool=tool.name, by=by, **texts)
