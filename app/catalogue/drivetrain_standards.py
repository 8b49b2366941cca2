"""Rows about chain and cassette: freehub bodies, cog pitches, chainlines, wear."""

from __future__ import annotations

from pydantic import BaseModel, ConfigDict, Field

from app.catalogue.dimension import Dimension
from app.catalogue.part import Interface, Line
from app.catalogue.provenance import Provenance
from app.catalogue.standard_row import Row
from app.facts.span import Span

NO_SPACER = Span(0, 0)


class CassetteFit(BaseModel):
    """Cassettes of an interface that go onto a body, with the spacer that goes behind the largest cog."""

    model_config = ConfigDict(frozen=True, extra="forbid")

    cassette: Interface
    speeds: tuple[int, ...] = Field(min_length=1)
    spacer_mm: Dimension = NO_SPACER
    provenance: Provenance
    source: Line

    @property
    def needs_spacer(self) -> bool:
        """Whether a spacer is always needed; one that starts at 0 depends on the cassette's own sheet."""
        return self.spacer_mm.low > 0


class FreehubBody(Row):
    """A freehub body and the cassettes that go onto it. `length_mm` is relative to the 8 to 10 speed body."""

    id: Interface
    smallest_cog: int
    length_mm: Dimension | None = None
    takes: tuple[CassetteFit, ...]

    def fits(self, cassette: str, speeds: int) -> CassetteFit | None:
        """How a cassette goes onto the body; None: it doesn't."""
        return next((fit for fit in self.takes if fit.cassette == cassette and speeds in fit.speeds), None)

    def takes_interface(self, cassette: str) -> bool:
        """Whether cassettes of an interface go onto the body with at least one number of speeds."""
        return any(fit.cassette == cassette for fit in self.takes)


class CogPitch(Row):
    """Distance from cog to cog, and what follows from it."""

    speeds: int
    use: Line
    pitch_mm: Dimension
    cog_mm: Dimension = Field(description="Thickness of one cog.")
    chain_width_mm: Dimension | None = Field(default=None, description="Over the rivets.")


class Chainline(Row):
    """Centre plane to the middle of the chainrings and to the middle of the cogs, as usually sold."""

    name: Line
    over_locknut_mm: Dimension
    front_mm: Dimension
    rear_mm: Dimension


class ChainWear(Row):
    """Wear in % of length at which a chain is changed, by the number of cogs."""

    speeds: tuple[int, ...] = Field(min_length=1)
    change_at_pct: Dimension
