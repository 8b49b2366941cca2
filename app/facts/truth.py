"""Three-valued truth: yes, no, and 'the reading cannot tell'."""

from __future__ import annotations

from enum import Enum


class Truth(Enum):
    """An answer to a yes-or-no question about a bike that is only partly known."""

    YES = "yes"
    NO = "no"
    UNKNOWN = "unknown"

    @classmethod
    def of(cls, *, yes: bool) -> Truth:
        """The truth of something that is certain."""
        return cls.YES if yes else cls.NO

    def __and__(self, other: Truth) -> Truth:
        if Truth.NO in (self, other):
            return Truth.NO
        return Truth.UNKNOWN if Truth.UNKNOWN in (self, other) else Truth.YES

    def __or__(self, other: Truth) -> Truth:
        if Truth.YES in (self, other):
            return Truth.YES
        return Truth.UNKNOWN if Truth.UNKNOWN in (self, other) else Truth.NO

    def __invert__(self) -> Truth:
        return {Truth.YES: Truth.NO, Truth.NO: Truth.YES}.get(self, Truth.UNKNOWN)
