"""Two states of one build beside each other, only what differs: verdict, facts, parts and findings."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from app.facts.answers import Answer
from app.facts.shown import what_we_read
from app.facts.table import FACTS
from app.report.changes import Moved, changed_facts, changes
from app.report.report import Finding, Report
from app.web.counter_side import KIND_NAMES
from app.web.shown_build import ShownBuild

NOT_ANSWERED = "Not answered"
TYPED = "{typed}, read as {read}"
WITH_TOOL = "{text}, {tool}"
NO_RULE = "This check wasn't there."
NO_PART = "None"
SAID = "{sentence} {remedy}"


@dataclass(frozen=True, slots=True)
class Side:
    """One side of a row. `state` and `words` are empty where there is no verdict to show."""

    text: str
    state: str = ""
    words: str = ""


@dataclass(frozen=True, slots=True)
class ChangeRow:
    """One thing that differs. `address` leads to its rule, or is empty."""

    label: str
    before: Side
    after: Side
    address: str = ""


@dataclass(frozen=True, slots=True)
class ChangeTable:
    """All that differs between two states; `before` and `after` name them."""

    before: str
    after: str
    facts: tuple[ChangeRow, ...]
    verdict: tuple[ChangeRow, ...]
    parts: tuple[ChangeRow, ...]
    findings: tuple[ChangeRow, ...]

    @property
    def is_empty(self) -> bool:
        """Whether nothing differs."""
        return not (self.facts or self.verdict or self.parts or self.findings)


def change_table(before: ShownBuild, after: ShownBuild, names: tuple[str, str]) -> ChangeTable:
    """What differs from the one to the other, under these two names."""
    moved = changes(before.report, after.report)
    facts = tuple(_fact(name, before, after) for name in changed_facts(before.answers, after.answers))
    return ChangeTable(
        *names,
        facts=facts,
        verdict=(_verdict(before.report, after.report),) if moved.verdict else (),
        parts=tuple(_parts(before.report, after.report)) if moved.kit else (),
        findings=tuple(_finding(each) for each in moved.findings),
    )


def _fact(name: str, before: ShownBuild, after: ShownBuild) -> ChangeRow:
    old, new = (_answer(name, shown.answers.get(name)) for shown in (before, after))
    return ChangeRow(f"{FACTS[name].letter} {FACTS[name].label}", old, new)


def _answer(name: str, answer: Answer | None) -> Side:
    if answer is None:
        return Side(NOT_ANSWERED)
    read = what_we_read(FACTS[name], answer)
    text = read if answer.typed == read else TYPED.format(typed=answer.typed, read=read)
    return Side(WITH_TOOL.format(text=text, tool=answer.tool) if answer.tool else text)


def _verdict(before: Report, after: Report) -> ChangeRow:
    old, new = (Side(report.sentence, report.state, report.verdict) for report in (before, after))
    return ChangeRow("Verdict", old, new)


def _parts(before: Report, after: Report) -> Iterator[ChangeRow]:
    for kind, label in KIND_NAMES.items():
        old, new = _part(before, kind), _part(after, kind)
        if old != new:
            yield ChangeRow(label, Side(old), Side(new))


def _part(report: Report, kind: str) -> str:
    part = report.best.parts.get(kind) if report.best else None
    return part.name if part else NO_PART


def _finding(moved: Moved) -> ChangeRow:
    return ChangeRow(moved.title, _said(moved.before), _said(moved.after), f"/rules/{moved.rule_id}")


def _said(finding: Finding | None) -> Side:
    if finding is None:
        return Side(NO_RULE)
    said = SAID.format(sentence=finding.sentence, remedy=finding.remedy).rstrip()
    return Side(said, finding.state, finding.words)
