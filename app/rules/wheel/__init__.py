"""The family wheel, in the order of the rule book."""

from app.rules.rule import Rule

RULES: tuple[Rule, ...] = ()
