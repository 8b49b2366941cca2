"""Whether pack and controller suit each other: volts of the full pack, amps that the controller draws."""

from __future__ import annotations

from app.catalogue.drive_parts import Controller, Pack
from app.rules.check import Check, Inapplicable, of_part
from app.rules.outcome import Weight
from app.rules.rule import PART_DATA, Says, rule

ONE_UNIT = Inapplicable("Pack and controller are one unit of their maker.")


@rule(
    title="The full pack stays below the controller's limit",
    weight=Weight.BLOCKS,
    applies="Where the controller isn't built into the pack's holder.",
    expects="The voltage of the fully charged pack is at most what the controller stands.",
    assumes="The charger is the pack's own, and nothing regenerates into a full pack.",
    source=PART_DATA,
    settled_by=(),
    says=Says(
        passed="The full pack has {reading}; this controller stands {high}. At worst {margin} in hand.",
        failed="The full pack has {reading}; this controller stands {high}. At best {margin} too much.",
        not_known="Ask the maker for the voltage of the full pack.",
        remedy="Take a pack of fewer cells in series, or a controller for a higher voltage.",
    ),
)
def pack_voltage(controller: Controller, pack: Pack) -> Check | Inapplicable:
    """The label's volts are those of a half-empty pack; what breaks a controller is the full one."""
    if pack.built_in_controller == controller.id:
        return ONE_UNIT
    return Check(reading=pack.full_v, unit="V", high=of_part(controller.full_voltage_limit_v))


@rule(
    title="The pack gives what the controller draws",
    weight=Weight.BLOCKS,
    applies="Where the controller isn't built into the pack's holder.",
    expects="The controller's battery limit is at most the pack's continuous current.",
    assumes="The pack is warm and not aged.",
    source=PART_DATA,
    settled_by=(),
    says=Says(
        passed="The controller draws up to {reading}; this pack gives {high} all the time. "
        "At worst {margin} in hand.",
        failed="The controller draws up to {reading}; this pack gives {high} all the time. "
        "At best {margin} too much.",
        not_known="Ask the maker for the pack's continuous current.",
        remedy="Take a pack for a higher current, or a controller with a lower battery limit.",
    ),
)
def pack_current(controller: Controller, pack: Pack) -> Check | Inapplicable:
    """Beyond it the pack's protection switches off on the hill."""
    if pack.built_in_controller == controller.id:
        return ONE_UNIT
    return Check(reading=controller.battery_current_limit_a, unit="A", high=of_part(pack.continuous_a))
