"""The pieces of a result, worded: what to do next, the parts of the best kit, the other kits."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from app.facts.table import FACTS
from app.report.report import Ask, KitReport, Named, Report
from app.web.counter_side import KIND_NAMES

A_MINUTE_S = 60
HALF_A_MINUTE_S = 45
MINUTE_AND_A_HALF_S = 90
SHORT, A_MINUTE, MINUTES = "less than a minute", "about a minute", "about {count} minutes"
SETTLES_ONE, SETTLES = "Settles 1 of {open} open checks.", "Settles {count} of {open} open checks."
SETTLES_ALL = "Settles the only open check."
ALSO = "{names} would do as well."
PASSED = ("1 check passed", "{count} checks passed")
SKIPPED = ("1 check doesn't apply", "{count} checks don't apply")
OTHER_KITS = "Other kits: {counts}"
# One kit, then several; "more" where the best kit is of the same sort.
FIT = ("{count} fits", "{count} fit")
MORE_FIT = ("{count} more fits", "{count} more fit")
UNSETTLED = ("{count} isn't settled", "{count} aren't settled")
DONT = ("{count} doesn't", "{count} don't")
DONT_FIT = ("{count} doesn't fit", "{count} don't fit")


@dataclass(frozen=True, slots=True)
class NextStep:
    """The one thing to do next: a fact with its question, how to take it, and what it costs and settles."""

    fact: str
    letter: str
    question: str
    advice: str
    effort: str
    settles: str


@dataclass(frozen=True, slots=True)
class PartRow:
    """One part of the kit; `quantity` is empty where nothing is to be pulled yet."""

    kind: str
    name: str
    quantity: str
    note: str


def next_step(report: Report) -> NextStep | None:
    """What to measure next; only where the verdict waits for it."""
    if report.state not in {"open", "close"} or not report.ask_next:
        return None
    ask = report.ask_next[0]
    fact = FACTS[ask.fact]
    return NextStep(ask.fact, fact.letter, fact.question, ask.advice, effort(ask.effort_s), _settles(ask))


def effort(seconds: int) -> str:
    """How long a reading takes, as a person would say it."""
    if seconds < HALF_A_MINUTE_S:
        return SHORT
    if seconds < MINUTE_AND_A_HALF_S:
        return A_MINUTE
    return MINUTES.format(count=round(seconds / A_MINUTE_S))


def _settles(ask: Ask) -> str:
    if ask.open_checks == 1:
        return SETTLES_ALL
    words = SETTLES_ONE if ask.settles == 1 else SETTLES
    return words.format(count=ask.settles, open=ask.open_checks)


def parts_to_pull(report: Report) -> tuple[PartRow, ...]:
    """The parts to pull from the shelf; none where nothing fits."""
    return tuple(
        [
            PartRow(KIND_NAMES[line.kind], line.name, str(line.quantity), line.note)
            for line in report.parts_to_pull
        ]
    )


def parts_of_kit(report: Report) -> tuple[PartRow, ...]:
    """The parts to pull with those that would do as well; where nothing fits, those of the nearest kit."""
    best = report.best
    if best is None:
        return ()
    also = {KIND_NAMES[kind]: _also(others) for kind, others in best.also.items()}
    rows = parts_to_pull(report) or [
        PartRow(KIND_NAMES[kind], part.name, "", "") for kind, part in best.parts.items()
    ]
    return tuple([_with_others(row, also.get(row.kind, "")) for row in rows])


def _with_others(row: PartRow, others: str) -> PartRow:
    return PartRow(row.kind, row.name, row.quantity, f"{row.note} {others}".strip()) if others else row


def _also(others: Sequence[Named]) -> str:
    return ALSO.format(names=", ".join([part.name for part in others]))


def other_kits(report: Report) -> tuple[KitReport, ...]:
    """Every kit but the best one, in the order of the ranking."""
    best = report.best.parts["hub"].id if report.best else ""
    return tuple(kit for kit in report.kits if kit.hub.id != best)


def count_kits(others: Sequence[KitReport], *, best_fits: bool) -> str:
    """Such as "Other kits: 2 more fit, 3 don't"."""
    states = [kit.state for kit in others]
    fit, no = states.count("fit") + states.count("care"), states.count("no")
    unsettled = len(states) - fit - no
    counts = [_count(MORE_FIT if best_fits else FIT, fit), _count(UNSETTLED, unsettled)]
    counts.append(_count(DONT if fit else DONT_FIT, no))
    return OTHER_KITS.format(counts=", ".join(filter(None, counts)))


def _count(words: tuple[str, str], count: int) -> str:
    return counted(words, count) if count else ""


def counted(words: tuple[str, str], count: int) -> str:
    """The words for one, or those for several, with their number."""
    return words[count != 1].format(count=count)
