"""The work in its order, with tools and tightening torques, and the cautions that go on every sheet."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from app.catalogue.hub_parts import AxleSet, Hub, TorqueArm
from app.catalogue.part import Part
from app.catalogue.standards import Standards
from app.facts.answers import Answers
from app.facts.span import Span
from app.report.combination import Combination
from app.report.numbers import span_text
from app.report.report import Finding, Job

MAKERS_OWN = "The part's own data"
SPREAD_RULES = ("rear_end_spread", "quick_release_closing")

# What can stop, burn or fine somebody: on every sheet. A qualified mechanic and the local code decide.
ALWAYS = (
    (
        "A conversion puts loads on a frame that was not rated for them. Its reserve can't be seen "
        "from outside; experts advise against conversions where the frame's maker has not agreed "
        "(institute for bicycle technology and safety, zedler.de). A qualified mechanic decides at the bike."
    ),
    "Both brakes must stop the bike with the motor off. Regeneration is not a brake.",
    "Tighten axle and torque arm again after 50 km and after 200 km, and look at them at every service.",
    "Lithium packs: matched charger, apart from the way out, never opened. Local rules apply.",
    (
        "Power, speed and throttle are limited by local law. "
        "This is a pointer, not legal advice: check the local code."
    ),
)


def _torque(nm: Span) -> str:
    return span_text(nm, "N·m", 0)


def _fastener(text: str, tool: str, name: str, standards: Standards) -> Job:
    row = standards.fastener(name)
    return Job(text, tool, _torque(row.torque_nm), row.source)


def _of_part(text: str, tool: str, nm: Span | None, fallback: str, standards: Standards) -> Job:
    """The part's own torque where its maker gives one, else that of its kind of fastener."""
    if nm is None:
        return _fastener(text, tool, fallback, standards)
    return Job(text, tool, _torque(nm), MAKERS_OWN)


def _frame_jobs(findings: Sequence[Finding]) -> Iterator[Job]:
    yield Job(
        "Take the wheel out. Check that the dropouts are parallel, clean and undamaged.",
        "Alignment tools",
        "",
        "",
    )
    for finding in findings:
        if finding.rule_id in SPREAD_RULES and finding.state == "care":
            yield Job(finding.sentence, "By hand or frame builder", "", finding.source)


def _wheel_jobs(hub: Hub, standards: Standards) -> Iterator[Job]:
    yield Job(
        "Lace and true the wheel. Measure and write down rim plane and tension.", "Truing stand", "", ""
    )
    if hub.rotor_fixing == "six_bolt":
        yield _fastener("Fit the rotor. Tighten in a star pattern.", "T25", "rotor_six_bolt", standards)
    elif hub.rotor_fixing == "center_lock":
        yield _fastener("Fit the rotor and its lockring.", "Lockring tool", "rotor_center_lock", standards)
    yield _fastener("Fit spacers and cassette.", "Lockring tool", "cassette_lockring", standards)


_AXLE_JOBS = {
    "quick_release": (
        "Seat the axle fully on both sides. Close the quick release.",
        "By hand",
        "quick_release",
    ),
    "bolt_on": ("Seat the axle fully on both sides. Tighten the axle nuts.", "Torque wrench", "axle_nut_m12"),
    "thru": ("Grease and fit the thru-axle.", "Torque wrench", "thru_axle_rear"),
}


def _bike_jobs(axle_set: AxleSet, arm: TorqueArm, standards: Standards) -> Iterator[Job]:
    text, tool, fallback = _AXLE_JOBS[axle_set.end]
    yield Job("Put the torque arm on the axle. Plates lie flat on flat metal.", "By hand", "", "")
    yield _of_part(text, tool, axle_set.tightening_nm, fallback, standards)
    if arm.anchor == "stay_clamp":
        yield _of_part("Close the clamp on the stay.", "Torque wrench", arm.tightening_nm, "m5", standards)
    else:
        yield _of_part("Bolt the torque arm.", "Torque wrench", arm.tightening_nm, "arm_bolt_m6", standards)


def jobs_of(parts: Sequence[Part], findings: Sequence[Finding], standards: Standards) -> tuple[Job, ...]:
    """Every step of the build of one combination, in working order."""
    kit = Combination.of(parts)
    jobs = [*_frame_jobs(findings), *_wheel_jobs(kit.hub, standards)]
    jobs += _bike_jobs(kit.axle_set, kit.torque_arm, standards)
    if kit.hub.rotor_fixing is not None:
        jobs.append(_fastener("Centre the caliper on the rotor.", "Torque wrench", "caliper_m6", standards))
    jobs += [
        Job(
            "Lead the cable down and forward, with a drip loop, never between nut and dropout.",
            "By hand",
            "",
            "",
        ),
        Job("Try both brakes with the motor off, then the motor with the wheel off the ground.", "", "", ""),
    ]
    return tuple(jobs)


def cautions_of(answers: Answers, findings: Sequence[Finding]) -> tuple[str, ...]:
    """What needs care on this bike, then what holds for every conversion."""
    own = tuple(finding.sentence for finding in findings if finding.state == "care")
    return (*own, *ALWAYS) if answers else ALWAYS
