"""Whether the axle goes into the rear end, and whether the frame may carry it."""

from app.rules.axle.width import dropout_width
from app.rules.rule import Rule

RULES: tuple[Rule, ...] = (dropout_width,)
