"""The ruler at the top of a check: one tick for each check, long where it is settled."""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache

TICK_STEP = 10
SETTLED_TICK = 20
OPEN_TICK = 9


@dataclass(frozen=True, slots=True)
class Ruler:
    """How many of all checks are settled, in words and as two SVG paths that hang from the upper edge."""

    settled: int
    total: int

    @property
    def words(self) -> str:
        """Such as "6 of 14 checks settled"."""
        if self.total == 1:
            return f"{self.settled} of 1 check settled"
        return f"{self.settled} of {self.total} checks settled"

    @property
    def view_box(self) -> str:
        """Wide enough for every tick, with half a step at either end."""
        return f"0 0 {max(self.total, 1) * TICK_STEP} 24"

    @property
    def settled_ticks(self) -> str:
        """The path of the long ticks."""
        return _ticks(0, self.settled, SETTLED_TICK)

    @property
    def open_ticks(self) -> str:
        """The path of the short ticks."""
        return _ticks(self.settled, self.total, OPEN_TICK)


@lru_cache(maxsize=1024)
def _ticks(first: int, end: int, length: int) -> str:
    return "".join(f"M{place * TICK_STEP + TICK_STEP // 2} 0v{length}" for place in range(first, end))
