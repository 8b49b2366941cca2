"""What a rule answers with: numbers and limits, a truth, a missing value, or 'does not apply'.

No rule chooses its verdict; it is read off these by `app.rules.outcome`.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType
from typing import NamedTuple, TypeAlias

from app.catalogue.part import Part
from app.catalogue.provenance import Provenance
from app.catalogue.standard_row import Limit as LimitRow
from app.facts.span import Exact, Span
from app.facts.truth import Truth

Value: TypeAlias = Span | str


class Limit(NamedTuple):
    """An end that a reading must keep to.

    value       a span, since a limit drawn from a part has the part's tolerance
    excluded    True where the source says below or before: the end itself does not belong
    source      where the number stands, if that is not the source of the whole rule
    """

    value: Span
    provenance: Provenance
    excluded: bool = False
    source: str = ""


def of_part(value: Span, source: str = "") -> Limit:
    """A limit that is the part's own data, and so may stop a fit."""
    return Limit(value, Provenance.PART, source=source)


def of_row(row: LimitRow, value: Span | None = None) -> Limit:
    """A limit from the table of limits; `value` where it is counted from a dimension of a part."""
    return Limit(row.value if value is None else value, row.provenance, row.excluded, row.source)


def habit(value: Exact) -> Limit:
    """A limit that is common practice: it cautions and never stops a fit."""
    return Limit(Span.exactly(value), Provenance.PRACTICE, source="Common practice")


def touching(provenance: Provenance = Provenance.DERIVED) -> Limit:
    """Zero: below it two bodies are in the same place."""
    return Limit(Span(0, 0), provenance, source="Two bodies can't be in one place")


NOTHING: Mapping[str, Value] = MappingProxyType({})


class Check(NamedTuple):
    """A reading and the limits it must keep to, or a truth.

    reading  thousandths of `unit`; None for a truth
    unit     as printed; empty for a plain count or a truth
    values   further numbers and words that the rule's sentences name; a name's ending gives its unit
    """

    reading: Span | None = None
    unit: str = ""
    low: Limit | None = None
    high: Limit | None = None
    values: Mapping[str, Value] = NOTHING
    truth: Truth | None = None
    provenance: Provenance = Provenance.PART

    @classmethod
    def of_truth(
        cls, truth: Truth, provenance: Provenance = Provenance.PART, values: Mapping[str, Value] | None = None
    ) -> Check:
        """The answer of a rule about words: it has no unit and no margin."""
        return cls(truth=truth, provenance=provenance, values=values or NOTHING)


@dataclass(frozen=True, slots=True)
class Missing:
    """The maker hasn't given a value of a part that the rule needs."""

    part: Part
    field: str


@dataclass(frozen=True, slots=True)
class Inapplicable:
    """The rule does not concern this bike or part. `because` is a whole sentence, a constant of the rule."""

    because: str


Given: TypeAlias = Check | Missing | Inapplicable
