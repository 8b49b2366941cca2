"""Whether pack and controller suit each other."""

from app.rules.electrics.supply import pack_current, pack_voltage
from app.rules.rule import Rule

RULES: tuple[Rule, ...] = (pack_voltage, pack_current)
