"""Facts of the rear wheel: tyre and rim."""

from __future__ import annotations

from app.facts.fact import Fact
from app.facts.table.entry import count, number
from app.facts.table.tools import DATA_SHEET, PRINTED, calipers, rule_or_tape, tool

WHEEL: tuple[Fact, ...] = (
    number(
        "E1",
        "bead_seat_mm",
        "Bead seat diameter",
        "mm",
        can_be=(200, 700),
        usual=(305, 640),
        tools=(PRINTED, rule_or_tape(2)),
        decimals=0,
        question="What is the second number of the size on the tyre, like 622 in 37-622?",
        how="Read the side of the tyre: in 37-622 it is 622; names in inches are not unique.",
        effort_s=20,
    ),
    number(
        "E2",
        "tyre_width_mm",
        "Tyre width",
        "mm",
        can_be=(15, 150),
        usual=(18, 120),
        tools=(PRINTED, calipers(1), rule_or_tape(2)),
        decimals=0,
        question="What is the first number of the size on the tyre, like 37 in 37-622?",
        how="Read the side of the tyre: in 37-622 it is 37.",
        effort_s=20,
    ),
    number(
        "E3",
        "rim_erd_mm",
        "Rim ERD",
        "mm",
        can_be=(150, 700),
        usual=(250, 620),
        tools=(tool("two cut spokes and a rule", "0.5", "0.2"), DATA_SHEET),
        question="What is the rim's effective diameter, where the spokes end?",
        how="Tyre and tape off: two cut spokes with nipples in opposite holes, rule across their far ends.",
        effort_s=600,
    ),
    count(
        "E4",
        "rim_holes",
        "Spoke holes in the rim",
        can_be=(8, 72),
        usual=(16, 48),
        question="How many spokes are in the rear wheel?",
        how="Count the spokes, or a quarter of the wheel and multiply by four.",
        effort_s=30,
    ),
    number(
        "E5",
        "rim_inner_width_mm",
        "Inner width of the rim",
        "mm",
        can_be=(8, 120),
        usual=(13, 45),
        tools=(calipers("0.3"), tool("printed on the part", "0.5"), rule_or_tape(1)),
        question="How wide is the rim between its side walls?",
        how="Tyre off: inside jaws between the side walls, or read the rim's print, like 19 in 622×19.",
        effort_s=300,
    ),
)
