"""What every row of a table of standards has: a name, where its numbers come from, and how sure they are."""

from __future__ import annotations

from collections.abc import Mapping
from decimal import Decimal
from fractions import Fraction
from typing import Annotated, Literal, TypeAlias

from pydantic import BaseModel, ConfigDict, Field, StringConstraints

from app.catalogue.dimension import Dimension
from app.catalogue.part import Line, Note
from app.catalogue.provenance import Provenance
from app.facts.span import Span

RowId: TypeAlias = Annotated[str, StringConstraints(pattern=r"^[a-z0-9]+([_-][a-z0-9]+)*$")]

KM_PER_MILE = Decimal("1.609344")


class Row(BaseModel):
    """A row of a table. `less_sure` names values of the row that come from a weaker source than the rest."""

    model_config = ConfigDict(frozen=True, extra="forbid")

    id: RowId
    provenance: Provenance
    source: Line = Field(description="A published source by name, 'common practice' or 'from memory'.")
    note: Note = ""
    less_sure: Mapping[str, Provenance] = Field(default_factory=dict)

    def provenance_of(self, field: str) -> Provenance:
        """Where one value of the row comes from."""
        return self.less_sure.get(field, self.provenance)


class Limit(Row):
    """A number that a rule decides by. `excluded`: the limit itself is no longer allowed (under 750 W)."""

    title: Line
    value: Dimension
    unit: Literal["mm", "N·m", "ratio", "edges", "deg", "%", "kg", "mm/mm"]
    excluded: bool = False


class Speed(BaseModel):
    """A speed as a law writes it."""

    model_config = ConfigDict(frozen=True, extra="forbid")

    value: Decimal = Field(gt=0, le=100, decimal_places=3)
    unit: Literal["km/h", "mph"] = "km/h"

    @property
    def kmh(self) -> Span:
        """In km/h; a mile is 1.609344 km, so this may be a thousandth wide."""
        return Span.exactly(Fraction(self.value) * Fraction(KM_PER_MILE if self.unit == "mph" else 1))
