"""The counter sheet as a page, and the piece of it that comes back while somebody types."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from typing import ClassVar

from app.drawings.paper_gauge import gauge_names
from app.facts.answers import Answers
from app.facts.reading import FactError
from app.facts.table import FACTS
from app.report.build import Checker
from app.web.counter_marks import marks_of
from app.web.counter_rows import Row, RowGroup, Seen, in_groups, rows_of
from app.web.counter_side import Side, side_of
from app.web.counter_views import drawing_beside
from app.web.draft import without_contradictions
from app.web.page import Density, Fragment, Page, TitleBlock
from app.web.posted import new_form_id
from app.web.written import NOTHING, Sheet, sheet_to_json

HEADING = "Counter sheet"
OR_CHANGE = "Or change {letter}, {label}"


@dataclass(frozen=True, slots=True)
class Problem:
    """One line of the list of problems: what is wrong, and where on the sheet."""

    fact: str
    message: str


@dataclass(frozen=True, slots=True)
class BuildHead:
    """What stands over a sheet: whose bike it is and what of it is kept. All empty for a new sheet."""

    code: str = ""
    revision: str = ""
    saved: str = ""
    job: str = ""
    kept_job: str = ""
    job_error: str = ""
    issued_by: str = ""
    issuer_error: str = ""

    @property
    def address(self) -> str:
        """Where the sheet stands and where its form is sent."""
        return f"{self.result}/counter" if self.code else "/counter"

    @property
    def result(self) -> str:
        """Where the result is; the other addresses of a build begin with it. Empty for a new sheet."""
        return f"/builds/{self.code}" if self.code else ""

    @property
    def sheet(self) -> str:
        """Where the workshop sheet is."""
        return f"{self.result}/sheet" if self.code else ""

    @property
    def copies(self) -> str:
        """Where a copy of the build is asked for."""
        return f"{self.result}/copies" if self.code else ""

    @property
    def heading(self) -> str:
        return f"{HEADING} {self.code}" if self.code else HEADING


@dataclass(frozen=True)
class CounterPage(Page):
    """Everything about one bike on one sheet.

    gauges  the names of the paper gauges that an answer may be given by
    shown   what is stored of every fact as the page is made, for the form to say what was changed on it
    """

    template: ClassVar[str] = "pages/counter.html"
    scripts: ClassVar[tuple[str, ...]] = ("vendor/htmx-4.0.1.min.js", "js/counter.js")
    density: ClassVar[Density] = "counter"

    build: BuildHead
    groups: tuple[RowGroup, ...]
    side: Side | None
    problems: tuple[Problem, ...]
    form_id: str
    shown: str
    gauges: tuple[str, ...]

    @property
    def heading(self) -> str:
        return self.build.heading

    @property
    def has_errors(self) -> bool:
        return bool(self.problems)

    @property
    def title_block(self) -> TitleBlock:
        return TitleBlock(code=self.build.code, revision=self.build.revision, saved=self.build.saved)


@dataclass(frozen=True)
class CounterAnswer(Fragment):
    """The side of the sheet, and for each row how it was read and what it does."""

    template: ClassVar[str] = "components/counter_answer.html"

    side: Side | None
    rows: tuple[Row, ...]
    problems: tuple[Problem, ...]


@dataclass(frozen=True)
class Sight:
    """A sheet as it is to be shown: what is written, what is stored, how it was read, and the errors.

    in_hand   the fact that somebody is at, or empty
    """

    sheet: Sheet
    stored: Sheet
    answers: Answers
    errors: tuple[FactError, ...] = ()
    in_hand: str = ""

    def judged(self, checker: Checker | None) -> tuple[tuple[Row, ...], Side | None]:
        """The rows with their marks, and the side. Without a catalogue nothing is judged."""
        answers = without_contradictions(self.answers, self.errors)
        report = checker.report(answers) if checker else None
        marks = marks_of(report, answers)
        rows = rows_of(Seen(self.sheet, self.stored, self.answers, self.errors, marks))
        if report is None:
            return rows, None
        return rows, side_of(report, drawing_beside(report, answers, checker, self.in_hand))

    def page(
        self, checker: Checker | None, build: BuildHead, problems: tuple[Problem, ...] = ()
    ) -> CounterPage:
        """The whole page."""
        rows, side = self.judged(checker)
        shown = {**self.stored, "job": replace(NOTHING, typed=build.kept_job)}
        return CounterPage(
            build,
            in_groups(rows),
            side,
            problems,
            new_form_id(),
            sheet_to_json(shown),
            gauge_names(checker.catalogue) if checker else (),
        )

    def answer(self, checker: Checker | None) -> CounterAnswer:
        """The piece that comes back while somebody types."""
        rows, side = self.judged(checker)
        return CounterAnswer(side, rows, problems_of(self.errors))


def problems_of(errors: tuple[FactError, ...]) -> tuple[Problem, ...]:
    """The errors as they are listed; of two facts that can't both be, the second has a line of its own."""
    return tuple(line for error in errors for line in _lines(error))


def _lines(error: FactError) -> Iterator[Problem]:
    yield Problem(error.fact, error.message)
    if error.also:
        other = FACTS[error.also]
        yield Problem(error.also, OR_CHANGE.format(letter=other.letter, label=other.label))
