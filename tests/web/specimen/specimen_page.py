"""Every component in every state, on one page that only developers see."""

from __future__ import annotations

from dataclasses import dataclass, replace
from pathlib import Path
from typing import ClassVar

from app.facts.fact import ChoiceFact, Group, NumberFact, Tool, Word
from app.facts.span import Span
from app.web.entry import UNTOUCHED, Entry
from app.web.page import Density, Page, TitleBlock
from app.web.ruler import Ruler
from app.web.settings import PROJECT
from app.web.site import Site, make_templates

FOLDER = Path(__file__).parent

STATES = (
    ("fit", "Fits"),
    ("care", "Take care"),
    ("close", "Too close to call"),
    ("open", "Not known yet"),
    ("gap", "Kit data missing"),
    ("no", "Doesn't fit"),
    ("skip", "Doesn't apply"),
)

WIDTH = NumberFact(
    name="dropout_width_mm",
    label="Dropout width",
    group=Group.FRAME,
    letter="A4",
    question="How far apart are the rear dropouts?",
    how_measured="Calipers between the inner faces at axle height, wheel out.",
    effort_s=120,
    unit="mm",
    can_be=Span(80_000, 220_000),
    usual=Span(110_000, 200_000),
    tools=(Tool("calipers", 300), Tool("rule or tape", 1_000)),
    decimals=1,
)
COG = NumberFact(
    name="smallest_cog",
    label="Smallest cog",
    group=Group.DRIVETRAIN,
    letter="C3",
    question="How many teeth has the smallest cog?",
    how_measured="Count the teeth, or read the number on its face.",
    effort_s=30,
    unit="",
    can_be=Span(9_000, 30_000),
    usual=Span(9_000, 18_000),
    tools=(),
    decimals=0,
    whole=True,
)
BRAKE = ChoiceFact(
    name="rear_brake",
    label="Rear brake",
    group=Group.BRAKE,
    letter="B1",
    question="Which brake is at the rear?",
    how_measured="Look at the rear wheel from the left.",
    effort_s=5,
    words=(
        Word("disc", "disc", "d"),
        Word("rim", "rim", "r"),
        Word("coaster", "coaster", "c"),
        Word("drum", "drum", "u"),
        Word("none", "none", "x"),
    ),
)


@dataclass(frozen=True)
class SpecimenFinding:
    """As much of a finding as is shown."""

    rule_id: str
    title: str
    state: str
    words: str
    sentence: str
    remedy: str
    limit_source: str


@dataclass(frozen=True)
class SpecimenError:
    """As much of an error of reading as is shown."""

    fact: str
    message: str


@dataclass(frozen=True)
class SpecimenPage(Page):
    """All of it. `form` says how the fields are laid out."""

    template: ClassVar[str] = "specimen.html"
    density: ClassVar[Density] = "home"

    states: tuple[tuple[str, str], ...]
    findings: tuple[SpecimenFinding, ...]
    rulers: tuple[Ruler, ...]
    errors: tuple[SpecimenError, ...]
    numbers: tuple[tuple[NumberFact, Entry], ...]
    choices: tuple[tuple[ChoiceFact, Entry], ...]

    heading = "Every part in every state"

    @property
    def title_block(self) -> TitleBlock:
        return TitleBlock(code="7Q4K-2M9Y", revision="B", catalogue="3f9c01ab77de", saved="3 May 2027, 10:42")


@dataclass(frozen=True)
class SheetSpecimenPage(SpecimenPage):
    """The same, as on the workshop sheet."""

    template: ClassVar[str] = "sheet_specimen.html"
    density: ClassVar[Density] = "sheet"


def specimen_site(site: Site) -> Site:
    """A site that knows the templates of the specimens as well."""
    return replace(site, templates=make_templates(PROJECT / "templates", FOLDER))


def specimen(kind: type[SpecimenPage]) -> SpecimenPage:
    """One of the specimen pages, filled."""
    return kind(
        states=STATES,
        findings=tuple(_finding(state, words) for state, words in STATES),
        rulers=(Ruler(0, 14), Ruler(6, 14), Ruler(1, 1), Ruler(44, 60)),
        errors=(
            SpecimenError("dropout_width_mm", "Dropout width must be a number, like 135 or 134.6"),
            SpecimenError("rear_brake", "Select the kind of brake, or I don't know"),
        ),
        numbers=tuple(
            (replace(fact, name=f"{fact.name}_{number}"), entry)
            for number, (fact, entry) in enumerate(_numbers())
        ),
        choices=tuple(
            (replace(BRAKE, name=f"{BRAKE.name}_{number}"), entry) for number, entry in enumerate(_choices())
        ),
    )


def _numbers() -> list[tuple[NumberFact, Entry]]:
    return [
        (WIDTH, UNTOUCHED),
        (WIDTH, Entry("135.4", "calipers", "135.4 mm ± 0.3", "fit", "Fits")),
        (WIDTH, Entry("134.6", "rule or tape", "134.6 mm ± 1", "close", "Too close to call", can_undo=True)),
        (WIDTH, Entry("?", "", "Not known", "open", "Not known yet")),
        (WIDTH, Entry("138", "calipers", "138.0 mm ± 0.3", "no", "Doesn't fit", note="138 mm is unusual.")),
        (WIDTH, Entry("wide", "calipers", error="Dropout width must be a number, like 135 or 134.6")),
        (COG, Entry("11", "", "11", "care", "Take care")),
    ]  # fmt: skip


def _choices() -> list[Entry]:
    return [
        UNTOUCHED,
        Entry("disc", reading="disc", state="fit", words="Fits"),
        Entry("?", reading="Not known", state="open", words="Not known yet"),
        Entry("coaster", reading="coaster", state="no", words="Doesn't fit", can_undo=True),
        Entry(error="Select the kind of brake, or I don't know"),
    ]


def _finding(state: str, words: str) -> SpecimenFinding:
    return SpecimenFinding(
        rule_id=f"dropout_width_{state}",
        title="Dropout width suits the axle set",
        state=state,
        words=words,
        sentence="Dropouts 134.6 mm ± 0.5; this axle set takes 135.0 to 136.0 mm.",
        remedy="Measure again with calipers (± 0.3)." if state in {"close", "open", "no", "care"} else "",
        limit_source="Axle set drawing, width over the shoulders.",
    )
