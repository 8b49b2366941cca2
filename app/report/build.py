"""Builds the report on one bike: judge, rank, word, and say what to do next."""

from __future__ import annotations

import hashlib
from collections.abc import Sequence
from dataclasses import dataclass, replace

from app.catalogue.catalogue import Catalogue
from app.catalogue.part import Part
from app.catalogue.standards import Standards
from app.facts.answers import Answers
from app.report.collision import with_ways_clear
from app.report.combinations import Combinations, draw_up
from app.report.findings import FindingsOf
from app.report.jobs import cautions_of, jobs_of
from app.report.judged import judge_hub
from app.report.nearest_fit import nearest_fits
from app.report.next_question import ask_next
from app.report.other_anchor import with_other_anchors
from app.report.parts_to_pull import parts_to_pull
from app.report.ranking import Field, Ranked, best_groups, best_of_each_hub, line_up
from app.report.report import CombinationReport, KitReport, Named, Nearest, Report
from app.report.verdict import EARL, NO_KITS, VERDICTS, also_open, deciding, sentence_of_kit, state_of_kit
from app.rules.evaluate import Bench
from app.rules.register import REGISTER, RULES_REVISION
from app.rules.rule import PART_KINDS, Rule
from app.rules.shelf import Shelf

SHOWN = 10


@dataclass(frozen=True)
class _Best:
    """What is worth showing: the best combinations, the parts of the first, and every kit's best."""

    shown: Sequence[CombinationReport]
    first: Ranked
    kits: tuple[KitReport, ...]
    nearest: tuple[Nearest, ...]


@dataclass(frozen=True)
class Checker:
    """A catalogue made ready for checks: drawn up once, then any bike can be put to it."""

    combinations: Combinations
    standards: Standards
    rules: tuple[Rule, ...]
    rules_revision: str
    shelf: Shelf

    @classmethod
    def of(cls, catalogue: Catalogue, standards: Standards, rules: tuple[Rule, ...] = REGISTER) -> Checker:
        """Draw up the combinations of a catalogue."""
        shelf = Shelf(rules, catalogue, standards)
        return cls(draw_up(catalogue, rules), standards, rules, _revision(standards), shelf)

    @property
    def catalogue(self) -> Catalogue:
        """The parts that are offered."""
        return self.combinations.catalogue

    def benches(self, answers: Answers) -> list[Bench]:
        """Every rule, ready to be asked about this bike."""
        return self.shelf.benches(answers)

    def report(self, answers: Answers) -> Report:
        """The whole report on one bike."""
        if not self.combinations.hubs:
            return self._without_kits()
        benches = self.benches(answers)
        judged = [judge_hub(hub, benches) for hub in self.combinations.hubs]
        field = line_up(judged)
        findings = FindingsOf(benches, answers)
        groups, of_hubs = best_groups(judged, field, SHOWN), best_of_each_hub(judged, field)
        shown = [_combination(rank, each, findings) for rank, each in enumerate(groups, start=1)]
        first = with_ways_clear(self, answers, groups[0].parts, shown[0].findings)
        first = with_other_anchors(answers, groups[0].parts, first, self.standards)
        shown[0] = replace(shown[0], findings=first)
        nearest: tuple[Nearest, ...] = ()
        if shown[0].state == "no":
            others = [_combination(0, each, findings) for each in of_hubs]
            nearest = nearest_fits(self, answers, [*shown, *others])
        kits = tuple(_kit(each, findings) for each in of_hubs)
        best = _Best(shown, groups[0], kits, nearest)
        return self._put_together(answers, field, best)

    def _put_together(self, answers: Answers, field: Field, found: _Best) -> Report:
        best = found.shown[0]
        asks = ask_next(found.shown, answers)
        stopped = best.state == "no"
        applying = [finding for finding in best.findings if finding.state != "skip"]
        return Report(
            state=best.state,
            verdict=best.verdict,
            sentence=sentence_of_kit(best.state, best.findings, asks),
            also_open=also_open(best.findings),
            passed=field.count(0),
            cant_tell=field.count(1),
            failed=field.count(2),
            settled=sum(finding.outcome != "cantTell" for finding in applying),
            total=len(applying),
            combinations=tuple(found.shown),
            kits=found.kits,
            parts_to_pull=()
            if stopped
            else parts_to_pull(found.first.parts, answers, self.catalogue, self.standards),
            jobs=() if stopped else jobs_of(found.first.parts, best.findings, self.standards),
            cautions=cautions_of(answers, best.findings),
            ask_next=asks,
            nearest_fit=found.nearest,
            catalogue_revision=self.catalogue.revision,
            rules_revision=self.rules_revision,
        )

    def _without_kits(self) -> Report:
        return Report(
            state="open", verdict=VERDICTS["open"], sentence=NO_KITS, also_open="",
            passed=0, cant_tell=0, failed=0, settled=0, total=0,
            combinations=(), kits=(), parts_to_pull=(), jobs=(), cautions=(), ask_next=(), nearest_fit=(),
            catalogue_revision=self.catalogue.revision, rules_revision=self.rules_revision,
        )  # fmt: skip


def _revision(standards: Standards) -> str:
    """Changes with the rules and with any number of the tables that they decide by."""
    return hashlib.sha256(f"{RULES_REVISION} {standards}".encode()).hexdigest()[:12]


def _named(part: Part) -> Named:
    return Named(part.id, part.name)


def _combination(rank: int, ranked: Ranked, findings: FindingsOf) -> CombinationReport:
    found = findings.about(ranked.parts)
    state = state_of_kit(found)
    return CombinationReport(
        rank=rank,
        key=_key(ranked.parts),
        state=state,
        verdict=VERDICTS[state],
        outcome=EARL[state],
        care=any(finding.state == "care" for finding in found),
        parts={kind: _named(part) for kind, part in zip(PART_KINDS, ranked.parts, strict=True)},
        also={
            kind: tuple(_named(other) for other in others if other is not part)
            for kind, part, others in zip(PART_KINDS, ranked.parts, ranked.also, strict=True)
            if len(others) > 1
        },
        count=ranked.count,
        findings=found,
    )


def _key(parts: Sequence[Part]) -> str:
    return "+".join(part.id for part in parts)


def _kit(ranked: Ranked, findings: FindingsOf) -> KitReport:
    found = findings.troubles(ranked.parts)
    state, worst = state_of_kit(found), deciding(found)
    return KitReport(
        _named(ranked.parts[0]),
        state,
        VERDICTS[state],
        _key(ranked.parts),
        worst.rule_id if worst else "",
        worst.sentence if worst else "",
    )
