"""Every mount, rotor and seat with every demo arm as side views on one page, to be looked at.

Run by hand: python -m tests.contact_sheet FILE.html
"""

from __future__ import annotations

import sys
from collections.abc import Iterator
from html import escape
from itertools import product
from pathlib import Path

from app.catalogue.hub_parts import AxleSet, Freehub, Hub, TorqueArm
from app.drawings.of_kit import SIDE_VIEW, drawing_of
from app.drawings.subject import Subject
from app.facts.answers import Answer, Answers, choice, number
from app.facts.span import Span
from app.report.findings import finding_of
from app.report.report import Finding
from app.rules.evaluate import Bench
from app.rules.register import REGISTER
from tests.demo import demo_catalogue, demo_standards
from tests.report.test_every_caliper import MEASURED, MOUNTS, ROTORS, SEATS, bike

STYLES = Path(__file__).parents[1] / "static" / "css"
ROTOR_PLANE = (
    number("rotor_offset_mm", Span.around("14.35", "0.3")),
    number("caliper_outboard_depth_mm", Span.around(20, "0.5")),
)
STAY: tuple[Answer, ...] = (
    choice("stay_section", {"oval"}),
    number("stay_width_mm", Span.around(17, "0.2")),
    number("stay_height_mm", Span.around(20, "0.2")),
    number("stay_angle_deg", Span.around(7, 1)),
    number("stay_offset_mm", Span.around(3, 1)),
    number("stay_lateral_mm", Span.around(8, 1)),
    number("stay_clear_from_mm", Span.around(60, 1)),
    number("stay_clear_to_mm", Span.around(240, 1)),
    number("chainstay_length_mm", Span.around(440, 2)),
)
PAGE = """<!doctype html><html lang="en-GB"><meta charset="utf-8"><title>Contact sheet</title>
<style>{styles}
body {{ padding: 1rem; }} .row {{ display: flex; gap: 1rem; overflow-x: auto; }}
.row > figure {{ flex: 0 0 18rem; margin: 0; font-size: .8rem; }}</style>
{body}</html>"""


def side_views() -> Iterator[str]:
    """A row of drawings for each mount, rotor and seat."""
    arms = [arm for arm in demo_catalogue().torque_arms if arm.anchor == "stay_clamp"]
    for mount, rotor, seat in product(MOUNTS, ROTORS, SEATS):
        answers = answers_for(mount, rotor, seat)
        figures = "".join(figure(answers, arm) for arm in arms)
        yield f'<h2>{mount}, {rotor} mm, {seat}</h2><div class="row">{figures}</div>'


def answers_for(mount: str, rotor: int, seat: str) -> Answers:
    """A bike with its stay; of a caliper that no mount places the two points are measured."""
    return bike(mount, rotor, seat, *STAY, *(MEASURED if mount == "flat" else ROTOR_PLANE))


def figure(answers: Answers, arm: TorqueArm) -> str:
    """The side view of one bike with one arm, over what the rules say of the two."""
    subject = subject_with(answers, arm)
    drawing = drawing_of(subject, SIDE_VIEW)
    assert drawing
    said = subject.findings["arm_caliper_far"]
    caption = escape(f"{arm.id}: {said.words}. {said.sentence}")
    return f"<figure>{drawing.inline()}<figcaption>{caption}</figcaption></figure>"


def subject_with(answers: Answers, arm: TorqueArm) -> Subject:
    """One bike with one arm on any axle set that it is made for."""
    hub, axle_set, freehub = built_with(arm)
    findings = {each.rule_id: each for each in findings_on(answers, arm)}
    return Subject(answers, hub, axle_set, arm, freehub, findings, demo_standards())


def findings_on(answers: Answers, arm: TorqueArm) -> Iterator[Finding]:
    """What every rule about the arm alone says."""
    for rule in REGISTER:
        if rule.part_kinds == ("torque_arm",):
            yield finding_of(Bench(rule, answers, demo_catalogue(), demo_standards()), answers, (arm,))


def built_with(arm: TorqueArm) -> tuple[Hub, AxleSet, Freehub]:
    """A hub, an axle set of it that the arm is made for, and a freehub of it."""
    stock = demo_catalogue()
    axle_set = next(each for each in stock.axle_sets if each.id in arm.axle_sets)
    hub = next(each for each in stock.hubs if each.id in axle_set.hubs)
    freehub = next(each for each in stock.freehubs if hub.id in each.hubs)
    return hub, axle_set, freehub


def contact_sheet() -> str:
    """The whole page."""
    names = ("tokens", "type", "drawing")
    styles = "".join((STYLES / f"{name}.css").read_text(encoding="utf-8") for name in names)
    return PAGE.format(styles=styles, body="".join(side_views()))


if __name__ == "__main__":
    Path(sys.argv[1]).write_text(contact_sheet(), encoding="utf-8")
