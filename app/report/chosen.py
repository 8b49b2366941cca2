"""The parts that are chosen to go with a combination: a rim, spacers behind the cassette, adapters."""

from __future__ import annotations

from collections.abc import Iterator

from app.catalogue.catalogue import Catalogue
from app.catalogue.hub_parts import Freehub, Hub
from app.catalogue.standards import Standards
from app.facts.answers import Answers
from app.facts.span import THOUSAND
from app.facts.truth import Truth
from app.mechanics.cassette import spacers_behind
from app.mechanics.chosen_parts import adapter_between, holes_agree, rims_for
from app.report.combination import Combination
from app.report.report import PartLine

RIM_NOTE = "The bike's own rim has another number of holes."
SPACER_NOTE = "Behind the largest cog."
ADAPTER_NOTE = "Joins {of} to {to}."


def _rim(hub: Hub, answers: Answers, catalogue: Catalogue) -> Iterator[PartLine]:
    """The first rim that takes the hub, where the bike's own doesn't and the hub is no wheel yet."""
    if hub.laced_into is not None or holes_agree(answers.span("rim_holes"), hub) is not Truth.NO:
        return
    with_track = answers.words("rear_brake") == {"rim"}
    bead_seat = answers.span("bead_seat_mm")
    for rim in rims_for(hub, catalogue.rims):
        if rim.bead_seat_mm.meets(bead_seat) and (rim.brake_track or not with_track):
            yield PartLine("rim", rim.id, rim.name, 1, RIM_NOTE)
            return


def _spacers(
    freehub: Freehub, answers: Answers, catalogue: Catalogue, standards: Standards
) -> Iterator[PartLine]:
    interfaces, speeds = answers.words("cassette_interface"), answers.span("cassette_speeds")
    if len(interfaces) != 1 or not speeds.is_exact:
        return
    fit = standards.body(freehub.interface).fits(next(iter(interfaces)), speeds.low // THOUSAND)
    if fit is None or not fit.needs_spacer:
        return
    for spacer in spacers_behind(fit.spacer_mm, freehub.interface, catalogue.spacers) or ():
        yield PartLine("spacer", spacer.id, spacer.name, 1, SPACER_NOTE)


def _joined(catalogue: Catalogue, joins: str, of: str | None, to: str | None) -> Iterator[PartLine]:
    if of is None or to is None or of == to:
        return
    adapter = adapter_between(joins, of, to, catalogue.adapters)
    if adapter is not None:
        note = ADAPTER_NOTE.format(of=of.replace("_", " "), to=to.replace("_", " "))
        yield PartLine("adapter", adapter.id, adapter.name, 1, note)


def _adapters(parts: Combination, answers: Answers, catalogue: Catalogue) -> Iterator[PartLine]:
    hub, controller = parts.hub, parts.controller
    yield from _joined(catalogue, "motor_plug", hub.motor_plug, controller.motor_plug)
    yield from _joined(catalogue, "pack_plug", parts.pack.plug, controller.pack_plug)
    yield from _joined(catalogue, "sensor_plug", parts.sensor.plug, controller.sensor_plug)
    fixing = answers.words("rotor_fixing")
    if answers.words("rear_brake") == {"disc"} and len(fixing) == 1:
        yield from _joined(catalogue, "rotor", next(iter(fixing)), hub.rotor_fixing)


def chosen_parts(
    parts: Combination, answers: Answers, catalogue: Catalogue, standards: Standards
) -> tuple[PartLine, ...]:
    """What goes with a combination beside its own parts, each with the reason for it."""
    return (
        *_rim(parts.hub, answers, catalogue),
        *_spacers(parts.freehub, answers, catalogue, standards),
        *_adapters(parts, answers, catalogue),
    )
