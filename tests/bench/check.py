"""What a check of one bike costs, and what it would cost to ask every rule about every combination.

Run by hand: `python -m tests.bench.check`. It prints times and ratios of one run; nothing passes or fails.
"""

from __future__ import annotations

import sys
import time
from collections.abc import Callable
from dataclasses import replace
from itertools import cycle
from statistics import median

from app.facts.answers import Answers, number
from app.facts.span import Span
from app.report.build import Checker
from app.rules.shelf import Shelf
from tests.bench.catalogues import LARGE, SMALL, Counts, generated
from tests.demo import demo_standards
from tests.report.bikes import bike, checker
from tests.report.naive import every_combination, judge_one

RUNS = 40
NEW_BIKES = 15
BIKE = "steel-touring-135-qr"
# Naive judging of all combinations takes seconds, so a share of them is timed and scaled up.
NAIVE_SHARE = 60


def milliseconds(work: Callable[[], object], runs: int = RUNS) -> float:
    """The median time of some runs, after one that isn't counted."""
    work()
    times = []
    for _ in range(runs):
        start = time.perf_counter()
        work()
        times.append((time.perf_counter() - start) * 1000)
    return median(times)


def _naive(ready: Checker, answers: Answers) -> float:
    every = list(every_combination(ready))
    some = every[:: max(1, len(every) // NAIVE_SHARE)]
    start = time.perf_counter()
    for parts in some:
        judge_one(ready, answers, parts)
    return (time.perf_counter() - start) * 1000 * len(every) / len(some)


def _new_bike(ready: Checker, answers: Answers) -> float:
    """A bike that the shop hasn't seen: only what no fact can move is known already."""

    def forget() -> Checker:
        shelf = Shelf(ready.rules, ready.catalogue, ready.standards)
        empty = replace(ready, shelf=shelf)
        empty.report(Answers())
        return empty

    times = []
    for _ in range(NEW_BIKES):
        fresh = forget()
        start = time.perf_counter()
        fresh.report(answers)
        times.append((time.perf_counter() - start) * 1000)
    return median(times)


def _one_fact(ready: Checker, answers: Answers) -> float:
    """The same bike with another reading of one width, as while a sheet is typed."""
    widths = cycle(number("dropout_width_mm", Span.exactly(f"135.{at:03}")) for at in range(0, 900, 7))
    return milliseconds(lambda: ready.report(answers.with_(next(widths))))


def _line(name: str, ready: Checker, answers: Answers) -> float:
    new, typed = _new_bike(ready, answers), _one_fact(ready, answers)
    print(f"{name:34} a new bike {new:7.1f} ms, one fact changed {typed:7.1f} ms")
    return new


def main() -> int:
    """Print the figures."""
    answers = bike(BIKE)
    _line(f"demo, {checker().combinations.size:,} combinations", checker(), answers)
    figures = {}
    for name, counts in (("small", SMALL), ("large", LARGE)):
        ready = Checker.of(generated(counts), demo_standards())
        figures[name] = _line(f"{name}, {counts.combinations:,} combinations", ready, answers)
    naive = _naive(Checker.of(generated(SMALL), demo_standards()), answers)
    print(f"{'small, every rule for each':34} {naive:8.1f} ms")
    print(f"naive over ours: {naive / figures['small']:.0f}")
    print(f"ten times the combinations cost: {figures['large'] / figures['small']:.2f} times")
    print(_described(SMALL), _described(LARGE), sep="\n")
    return 0


def _described(counts: Counts) -> str:
    return f"{counts.combinations:,} combinations: {counts}"


if __name__ == "__main__":
    sys.exit(main())
