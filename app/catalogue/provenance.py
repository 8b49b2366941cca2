"""Where a number comes from, and so what it may do."""

from __future__ import annotations

from enum import StrEnum


class Provenance(StrEnum):
    """What kind of source a limit has. The last three may caution, never stop a fit.

    `practice_stops` is for the few habits of the trade that are a plain never.
    """

    PART = "part"
    MEASURED = "measured"
    PUBLISHED = "published"
    DERIVED = "derived"
    PRACTICE_STOPS = "practice_stops"
    PRACTICE = "practice"
    MEMORY = "memory"
    ESTIMATE = "estimate"

    @property
    def may_stop_a_fit(self) -> bool:
        """Whether a limit of this kind can block."""
        return self not in _WEAK


_WEAK = frozenset({Provenance.PRACTICE, Provenance.MEMORY, Provenance.ESTIMATE})
