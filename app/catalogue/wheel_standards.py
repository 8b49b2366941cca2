"""Rows about wheels and the jobs of a build: bead seats, tyres on rims, roll-out, torques, anchors."""

from __future__ import annotations

from pydantic import Field

from app.catalogue.dimension import Dimension
from app.catalogue.part import Line
from app.catalogue.standard_row import Row


class BeadSeat(Row):
    """A bead seat diameter and the names it is sold under; only the diameter is a match."""

    bead_seat_mm: Dimension
    names: Line


class RimTyre(Row):
    """Tyre widths for a rim's inner width; a row reaches halfway to its neighbours."""

    inner_from_mm: Dimension
    inner_to_mm: Dimension
    tyre_from_mm: Dimension
    tyre_to_mm: Dimension


class RollOut(Row):
    """By what share a loaded tyre rolls less than its geometry says."""

    tyre_mm: Dimension
    shorter_by: Dimension
    give: Dimension = Field(description="Share of the circumference to allow on either side.")


class Fastener(Row):
    """How tight a fastener is made; what its maker says wins."""

    name: Line
    torque_nm: Dimension


class Anchor(Row):
    """The force that a piece bears where a torque arm ends."""

    name: Line
    force_n: Dimension
