"""Pointers to the law of the region, and the mass that the frame may carry."""

from app.rules.law_and_load.law import law_power, law_speed, law_throttle
from app.rules.law_and_load.mass import permissible_mass
from app.rules.rule import Rule

RULES: tuple[Rule, ...] = (law_power, law_speed, law_throttle, permissible_mass)
