"""The one table of facts: everything that is asked about a bike and a wish, in the order it is asked."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType

from app.facts.fact import Fact
from app.facts.table.brake import BRAKE
from app.facts.table.drivetrain import DRIVETRAIN
from app.facts.table.fit_out import FIT_OUT
from app.facts.table.frame import FRAME
from app.facts.table.stay import STAY
from app.facts.table.wheel import WHEEL
from app.facts.table.wish import WISH

__all__ = ["FACTS"]

FACTS: Mapping[str, Fact] = MappingProxyType(
    {fact.name: fact for fact in (*FRAME, *BRAKE, *DRIVETRAIN, *STAY, *WHEEL, *FIT_OUT, *WISH)}
)
