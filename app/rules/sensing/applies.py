"""When a rule about pedal sensing does not concern the controller: it takes no pedal sensor."""

from __future__ import annotations

from app.catalogue.drive_parts import Controller
from app.rules.check import Inapplicable, Missing

THROTTLE_ONLY = Inapplicable("This controller takes no pedal sensor.")


def no_sensor(controller: Controller) -> Inapplicable | Missing | None:
    """The reason not to ask, what the maker owes, or None where the controller reads a pedal sensor."""
    if controller.reads is None:
        return Missing(controller, "reads")
    return None if controller.reads else THROTTLE_ONLY
