"""Rows about the law of a region: a pointer to the local code, never advice."""

from __future__ import annotations

from datetime import date
from typing import Literal

from pydantic import Field

from app.catalogue.dimension import Dimension
from app.catalogue.part import Line, Note
from app.catalogue.standard_row import Row, Speed
from app.facts.span import Span


class Region(Row):
    """Limits of a region. `…_excluded`: the number itself is no longer allowed, as in 'under 750 W'.

    throttle   'no': none without pedalling; 'yes': up to the speed limit; 'approval': only with type approval
    """

    id: Literal["eu", "gb", "us_federal", "us_class_1", "us_class_2", "us_class_3", "ca", "au", "other"]
    name: Line
    pointer: Note = Field(description="What the report prints beside the numbers.")
    power_w: Dimension | None = None
    power_excluded: bool = False
    power_is: Literal["continuous_rated", "total", "not_said"] = "not_said"
    speed: Speed | None = None
    speed_excluded: bool = False
    throttle: Literal["no", "yes", "approval", "unknown"] = "unknown"
    last_checked: date

    @property
    def speed_kmh(self) -> Span | None:
        """The speed at which assistance ends, in km/h."""
        return self.speed.kmh if self.speed else None
