"""The shape of a report: everything that pages, sheets, the JSON API and saved builds show of a check."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

from pydantic import TypeAdapter


@dataclass(frozen=True, slots=True)
class Named:
    """A part as it is shown."""

    id: str
    name: str


@dataclass(frozen=True, slots=True)
class Measured:
    """A reading and what it must keep to, for a drawing: ends in thousandths of the finding's unit.

    low, high  the limits on either side, which have a part's tolerance; None where a side has none
    places     the decimal places at which the sentence shows them
    """

    reading: tuple[int, int]
    low: tuple[int, int] | None
    high: tuple[int, int] | None
    places: int


@dataclass(frozen=True, slots=True)
class Finding:
    """What one rule says of one combination.

    state        fit, care, close, open, gap, no or skip: the seven gauge marks
    outcome      passed, failed, cantTell or inapplicable
    words        the state in words: "Fits", "Doesn't fit", …
    sentence     what is so, with its numbers
    remedy       what would make it fit; empty where nothing is wrong
    facts        the facts that move it, the ones it read first
    open_facts   those of them that aren't known, or not closely enough
    margin       thousandths in hand at worst or, below zero, short at best; None without numbers
    unit         of the margin, as printed
    leaning      for staff, where a reading straddles a limit: "leans no: 0.4 mm short"
    measured     the numbers that the sentence names; None where there are none
    """

    rule_id: str
    title: str
    family: str
    state: str
    outcome: str
    weight: str
    words: str
    sentence: str
    remedy: str
    source: str
    facts: tuple[str, ...]
    open_facts: tuple[str, ...]
    leaning: str = ""
    margin: int | None = None
    unit: str = ""
    measured: Measured | None = None


@dataclass(frozen=True, slots=True)
class CombinationReport:
    """One combination, or a group that differs in nothing that a rule can see.

    key    the part ids in the order of the kinds, joined by a plus sign
    parts  by kind: hub, axle_set, torque_arm, freehub, winding, controller, pack, sensor
    also   by kind: other parts that would do as well
    count  how many combinations stand behind this one
    """

    rank: int
    key: str
    state: str
    verdict: str
    outcome: str
    care: bool
    parts: dict[str, Named]
    also: dict[str, tuple[Named, ...]]
    count: int
    findings: tuple[Finding, ...]


@dataclass(frozen=True, slots=True)
class KitReport:
    """One hub with the best that can be made of it."""

    hub: Named
    state: str
    verdict: str
    key: str
    deciding: str
    sentence: str


@dataclass(frozen=True, slots=True)
class PartLine:
    """One line of the parts to pull."""

    kind: str
    id: str
    name: str
    quantity: int
    note: str


@dataclass(frozen=True, slots=True)
class Job:
    """One step of the work, with the tool and the tightening torque where there is one."""

    text: str
    tool: str
    torque: str
    source: str


@dataclass(frozen=True, slots=True)
class Ask:
    """A fact worth measuring next, and what it would settle."""

    fact: str
    label: str
    tool: str
    settles: int
    open_checks: int
    effort_s: int
    advice: str


@dataclass(frozen=True, slots=True)
class Nearest:
    """The fewest changes that would make a failed bike fit, and which kit it would then take."""

    changes: tuple[str, ...]
    kit: str
    key: str
    new_part: bool = False


@dataclass(frozen=True, slots=True)
class Report:
    """All that a check of one bike tells."""

    state: str
    verdict: str
    sentence: str
    also_open: str
    passed: int
    cant_tell: int
    failed: int
    settled: int
    total: int
    combinations: tuple[CombinationReport, ...]
    kits: tuple[KitReport, ...]
    parts_to_pull: tuple[PartLine, ...]
    jobs: tuple[Job, ...]
    cautions: tuple[str, ...]
    ask_next: tuple[Ask, ...]
    nearest_fit: tuple[Nearest, ...]
    catalogue_revision: str
    rules_revision: str

    @property
    def best(self) -> CombinationReport | None:
        """The combination that the verdict is about."""
        return self.combinations[0] if self.combinations else None


_REPORT = TypeAdapter(Report)


def report_to_json(report: Report) -> dict[str, Any]:
    """The report as plain data, in the names of the JSON API."""
    plain: dict[str, Any] = _REPORT.dump_python(report, mode="json")
    return plain


def report_from_json(plain: Any) -> Report:  # noqa: ANN401 - any data may come; what isn't a report is refused
    """A report from plain data. Errors: pydantic.ValidationError for data that isn't one."""
    return _REPORT.validate_python(plain)
