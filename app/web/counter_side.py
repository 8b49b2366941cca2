"""What always stands beside the counter sheet: the verdict, the kits, what to measure next, what to pull."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from markupsafe import Markup

from app.facts.messages import THIN
from app.facts.table import FACTS
from app.report.report import Ask, KitReport, PartLine, Report
from app.web.ruler import Ruler

STANDING = "{standing} of {kits} kits still standing"
ONE_KIT = {0: "The only kit is out", 1: "The only kit is still standing"}
SECONDS = "about {count}" + THIN + "s"
MINUTES = "about {count}" + THIN + "min"
A_MINUTE_S = 60
KIND_NAMES: Mapping[str, str] = {
    "hub": "Hub",
    "axle_set": "Axle set",
    "torque_arm": "Torque arm",
    "freehub": "Freehub",
    "winding": "Winding",
    "controller": "Controller",
    "pack": "Pack",
    "sensor": "Sensor",
    "rim": "Rim",
    "adapter": "Adapter",
    "spacer": "Spacer",
}


@dataclass(frozen=True, slots=True)
class Next:
    """The fact that settles most: where it stands on the sheet and what it costs."""

    fact: str
    letter: str
    label: str
    effort: str


@dataclass(frozen=True, slots=True)
class Pull:
    """One line of the parts to pull."""

    kind: str
    name: str
    quantity: int


@dataclass(frozen=True, slots=True)
class Side:
    """Everything beside the facts, ready to be shown; the drawing is of where the fact in hand is."""

    state: str
    verdict: str
    kit: str
    sentence: str
    also_open: str
    ruler: Ruler
    standing: str
    kits: tuple[KitReport, ...]
    next: Next | None
    parts: tuple[Pull, ...]
    changes: tuple[str, ...]
    drawing: Markup


def side_of(report: Report, drawing: Markup) -> Side:
    """The side that goes with a report."""
    best = report.best
    nearest = report.nearest_fit[0].changes if report.nearest_fit else ()
    return Side(
        state=report.state,
        verdict=report.verdict,
        kit=best.parts["hub"].name if best else "",
        sentence=report.sentence,
        also_open=report.also_open,
        ruler=Ruler(report.settled, report.total),
        standing=_standing(report.kits),
        kits=report.kits,
        next=_next(report.ask_next[0]) if report.ask_next else None,
        parts=tuple(_pull(part) for part in report.parts_to_pull),
        changes=nearest,
        drawing=drawing,
    )


def _standing(kits: tuple[KitReport, ...]) -> str:
    standing = sum(kit.state != "no" for kit in kits)
    return ONE_KIT[standing] if len(kits) == 1 else STANDING.format(standing=standing, kits=len(kits))


def _next(ask: Ask) -> Next:
    seconds = ask.effort_s < A_MINUTE_S
    effort = (
        SECONDS.format(count=ask.effort_s)
        if seconds
        else MINUTES.format(count=-(-ask.effort_s // A_MINUTE_S))
    )
    return Next(ask.fact, FACTS[ask.fact].letter, ask.label, effort)


def _pull(part: PartLine) -> Pull:
    return Pull(KIND_NAMES[part.kind], part.name, part.quantity)
