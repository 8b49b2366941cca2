"""A rule: its words, what it needs to know, and one short function that answers with numbers."""

from __future__ import annotations

import inspect
from collections.abc import Callable
from dataclasses import dataclass

from app.facts.table import FACTS
from app.rules.check import Given, Limit
from app.rules.outcome import Weight

# The parts a combination is made of, in the order in which its key names them.
PART_KINDS = ("hub", "axle_set", "torque_arm", "freehub", "winding", "controller", "pack", "sensor")
BUILD_KINDS, DRIVE_KINDS = PART_KINDS[:4], PART_KINDS[4:]
# Handed to a rule that names them: the two views of the bike, the tables, and the parts that are chosen.
HANDED_IN = ("bike", "wish", "standards", "stock")


@dataclass(frozen=True, slots=True)
class Source:
    """Where a rule comes from: a published text and its place, a part's own data, or common practice."""

    name: str
    place: str = ""

    def __str__(self) -> str:
        return f"{self.name}, {self.place}" if self.place else self.name


PRACTICE = Source("Common practice")
PART_DATA = Source("The part's own data")


@dataclass(frozen=True, slots=True, kw_only=True)
class Says:
    """The sentences of a rule, whole and static; braces name numbers of its check.

    {reading}, {low}, {high} and {margin} are there for every rule with numbers; others are its `values`.
    passed, failed     what is so; `failed_high` where too much reads differently from too little
    not_known          what to do about a fact that isn't known: "Measure the slot width."
    remedy             what would make it fit; `remedy_high` for the other side
    """

    passed: str
    failed: str
    not_known: str
    remedy: str
    failed_high: str = ""
    remedy_high: str = ""


@dataclass(frozen=True, slots=True)
class Rule:
    """A rule of the register. Its id is the name of its function.

    takes       what its function is handed, in its order
    part_kinds  the kinds of part among these, in the order of a combination
    """

    function: Callable[..., Given]
    title: str
    family: str
    weight: Weight
    version: int
    applies: str
    expects: str
    assumes: str
    source: Source
    settled_by: tuple[str, ...]
    limits: tuple[Limit, ...]
    says: Says
    of_wish: bool
    stops_as: int
    takes: tuple[str, ...]
    part_kinds: tuple[str, ...]

    @property
    def id(self) -> str:
        """The name by which pages, cases and saved builds know the rule."""
        return self.function.__name__

    @property
    def build_side(self) -> tuple[str, ...]:
        """Its kinds of part that sit on the axle."""
        return tuple(kind for kind in self.part_kinds if kind in BUILD_KINDS)

    @property
    def drive_side(self) -> tuple[str, ...]:
        """Its kinds of part that feed the motor."""
        return tuple(kind for kind in self.part_kinds if kind in DRIVE_KINDS)


def _checked(function: Callable[..., Given], settled_by: tuple[str, ...]) -> tuple[str, ...]:
    """The names of a rule's parameters, all of them known."""
    takes = tuple(inspect.signature(function).parameters)
    strange = [name for name in takes if name not in PART_KINDS + HANDED_IN]
    strange += [name for name in settled_by if name not in FACTS]
    if strange:
        message = f"{function.__name__} names {', '.join(strange)}, which is neither a fact nor handed in."
        raise ValueError(message)
    return takes


def rule(
    *,
    title: str,
    weight: Weight,
    applies: str,
    expects: str,
    assumes: str,
    source: Source,
    settled_by: tuple[str, ...],
    says: Says,
    limits: tuple[Limit, ...] = (),
    version: int = 1,
    of_wish: bool = False,
    stops_as: int = 1,
) -> Callable[[Callable[..., Given]], Rule]:
    """Make a function into a rule.

    settled_by  the facts that move it: it gets a view of these alone
    limits      the limits that are not part data, so that the rules' revision changes with them
    of_wish     about what the rider wants: it orders what fits, and is never a reason not to
    stops_as    how many common rules it counts for in the order of what doesn't fit: more where no
                change to the bike helps
    version     raised by hand when what the rule says of any bike may change

    Errors: a name that is no fact, or that nothing is handed in for, is a ValueError.
    """

    def make(function: Callable[..., Given]) -> Rule:
        takes = _checked(function, settled_by)
        family = function.__module__.removeprefix("app.rules.").split(".")[0]
        return Rule(
            function, title, family, weight, version, applies, expects, assumes, source,
            settled_by, limits, says, of_wish, stops_as, takes,
            tuple(kind for kind in PART_KINDS if kind in takes),
        )  # fmt: skip

    return make
