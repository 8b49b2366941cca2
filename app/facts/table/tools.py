"""The ways a reading is taken, each with the uncertainty it has on a bike, in thousandths of the unit.

Common practice of the workshop: jaws that stand a little askew, paint, burrs and parallax are in it.
"""

from __future__ import annotations

from app.facts.fact import Tool
from app.facts.span import Exact, thousandths_above


def tool(name: str, plus_minus: Exact, best: Exact = 0) -> Tool:
    """A tool with its ± and the best that can be claimed for it, both in the fact's unit."""
    return Tool(name, thousandths_above(plus_minus), thousandths_above(best))


def calipers(plus_minus: Exact) -> Tool:
    """Vernier calipers, in mm."""
    return tool("calipers", plus_minus, "0.05")


def depth_rod(plus_minus: Exact) -> Tool:
    """The rod at the end of the calipers, in mm."""
    return tool("depth rod", plus_minus, "0.05")


def rule_or_tape(plus_minus: Exact) -> Tool:
    """A steel rule or a tape measure, in mm."""
    return tool("rule or tape", plus_minus, "0.5")


MICROMETER = tool("micrometer", "0.02", "0.01")
PRINTED = tool("printed on the part", 0)
DATA_SHEET = tool("maker's data sheet", 0)
DUMMY_AXLE = tool("dummy axle and rule", 1, "0.5")
STRAIGHT_EDGE = tool("straight edge and calipers", "0.5", "0.2")
PHONE_LEVEL = tool("phone level", 1, "0.2")
PROTRACTOR = tool("protractor", 1, "0.5")
AS_WISHED = tool("as wished", 0)
