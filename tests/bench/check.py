"""What a check of one bike costs, and what it would cost to ask every rule about every combination.

Run by hand: `python -m tests.bench.check`. It prints times and ratios of one run; nothing passes or fails.
"""

from __future__ import annotations

import sys
import time
from collections.abc import Callable
from statistics import median

from app.facts.answers import Answers
from app.report.build import Checker
from app.report.judged import judge_hub
from tests.bench.catalogues import LARGE, SMALL, Counts, generated
from tests.demo import demo_standards
from tests.report.bikes import bike, checker
from tests.report.naive import every_combination, judge_one

RUNS = 40
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


def _judging(ready: Checker, answers: Answers) -> float:
    return milliseconds(lambda: [judge_hub(hub, ready.benches(answers)) for hub in ready.combinations.hubs])


def _line(name: str, ready: Checker, answers: Answers) -> tuple[float, float]:
    whole, judging = milliseconds(lambda: ready.report(answers)), _judging(ready, answers)
    print(f"{name:34} {whole:8.1f} ms, of which judging {judging:6.1f} ms")
    return whole, judging


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
    print(f"naive over ours: {naive / figures['small'][0]:.0f}")
    print(f"ten times the combinations cost: {figures['large'][0] / figures['small'][0]:.2f} times")
    print(_described(SMALL), _described(LARGE), sep="\n")
    return 0


def _described(counts: Counts) -> str:
    return f"{counts.combinations:,} combinations: {counts}"


if __name__ == "__main__":
    sys.exit(main())
