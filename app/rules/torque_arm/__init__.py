"""The family torque_arm, in the order of the rule book."""

from app.rules.rule import Rule

RULES: tuple[Rule, ...] = ()
