"""All rules, in the order of the rule book: a tuple that one can read, and nothing found by magic."""

from __future__ import annotations

import hashlib
from types import MappingProxyType

from app.rules import axle, brake, drivetrain, electrics, law_and_load, sensing, torque_arm, wheel
from app.rules.rule import Rule

REGISTER: tuple[Rule, ...] = (
    *axle.RULES,
    *brake.RULES,
    *drivetrain.RULES,
    *torque_arm.RULES,
    *wheel.RULES,
    *sensing.RULES,
    *electrics.RULES,
    *law_and_load.RULES,
)

BY_ID = MappingProxyType({rule.id: rule for rule in REGISTER})


def _revision() -> str:
    lines = [f"{rule.id} {rule.version} {rule.weight.value} {rule.limits}" for rule in REGISTER]
    return hashlib.sha256("\n".join(lines).encode()).hexdigest()[:12]


# Changes whenever a rule comes, goes, is raised in version, or has a limit changed.
RULES_REVISION = _revision()
