"""Whether the plugs of hub, pack and sensor go into the controller, and the cables reach."""

from __future__ import annotations

from app.catalogue.catalogue import Catalogue
from app.catalogue.drive_parts import Controller, Pack, Sensor
from app.catalogue.hub_parts import Hub
from app.facts.bike import Bike
from app.facts.truth import Truth
from app.mechanics.chosen_parts import adapter_between
from app.rules.check import Check, Inapplicable, Missing, of_part
from app.rules.outcome import Weight
from app.rules.rule import PART_DATA, Says, rule
from app.rules.sensing.applies import no_sensor

INSIDE_THE_HUB = Inapplicable("The controller sits inside this hub.")
INSIDE_THE_PACK = Inapplicable("The controller sits inside the holder of this pack.")
ASSUMES = "Plugs of one name carry the same pins."
ASK = "Ask the maker which plug it has."


def joined(joins: str, of: str, to: str, stock: Catalogue) -> Check:
    """The same plug on both, or an adapter of the catalogue between them."""
    same_plug = of == to or adapter_between(joins, of, to, stock.adapters) is not None
    return Check.of_truth(
        Truth.of(yes=same_plug), values={"of": of.replace("_", " "), "to": to.replace("_", " ")}
    )


@rule(
    title="The motor's plug goes into the controller",
    weight=Weight.CAUTIONS,
    applies="Where the controller doesn't sit inside the hub.",
    expects="Both have the same plug, or the catalogue has an adapter.",
    assumes=ASSUMES,
    source=PART_DATA,
    settled_by=(),
    says=Says(
        passed="Motor plug {of}, controller {to}: they join, directly or by an adapter of this catalogue.",
        failed="Motor plug {of}, controller {to}: they don't join, and this catalogue has no adapter.",
        not_known=ASK,
        remedy="Take another controller, or have the plug changed by the maker.",
    ),
)
def motor_plug(hub: Hub, controller: Controller, stock: Catalogue) -> Check | Inapplicable | Missing:
    """Names of plug shapes are our own."""
    if hub.built_in_controller == controller.id:
        return INSIDE_THE_HUB
    if hub.motor_plug is None:
        return Missing(hub, "motor_plug")
    if controller.motor_plug is None:
        return Missing(controller, "motor_plug")
    return joined("motor_plug", hub.motor_plug, controller.motor_plug, stock)


@rule(
    title="The pack's plug goes into the controller",
    weight=Weight.CAUTIONS,
    applies="Where the controller doesn't sit inside the pack's holder.",
    expects="Both have the same plug, or the catalogue has an adapter.",
    assumes=ASSUMES,
    source=PART_DATA,
    settled_by=(),
    says=Says(
        passed="Pack plug {of}, controller {to}: they join, directly or by an adapter of this catalogue.",
        failed="Pack plug {of}, controller {to}: they don't join, and this catalogue has no adapter.",
        not_known=ASK,
        remedy="Take another pack or controller, or have the plug changed by the maker. "
        "A pack is not opened for it.",
    ),
)
def pack_plug(controller: Controller, pack: Pack, stock: Catalogue) -> Check | Inapplicable | Missing:
    """Names of plug shapes are our own."""
    if pack.built_in_controller == controller.id:
        return INSIDE_THE_PACK
    if pack.plug is None:
        return Missing(pack, "plug")
    if controller.pack_plug is None:
        return Missing(controller, "pack_plug")
    return joined("pack_plug", pack.plug, controller.pack_plug, stock)


@rule(
    title="The sensor's plug goes into the controller",
    weight=Weight.CAUTIONS,
    applies="Where the controller takes a pedal sensor.",
    expects="Both have the same plug, or the catalogue has an adapter.",
    assumes=ASSUMES,
    source=PART_DATA,
    settled_by=(),
    says=Says(
        passed="Sensor plug {of}, controller {to}: they join, directly or by an adapter of this catalogue.",
        failed="Sensor plug {of}, controller {to}: they don't join, and this catalogue has no adapter.",
        not_known=ASK,
        remedy="Take another sensor, or have the plug changed by the maker.",
    ),
)
def sensor_plug(controller: Controller, sensor: Sensor, stock: Catalogue) -> Check | Inapplicable | Missing:
    """Names of plug shapes are our own."""
    if reason := no_sensor(controller):
        return reason
    if sensor.plug is None:
        return Missing(sensor, "plug")
    if controller.sensor_plug is None:
        return Missing(controller, "sensor_plug")
    return joined("sensor_plug", sensor.plug, controller.sensor_plug, stock)


@rule(
    title="The cables reach from the hub to the handlebar",
    weight=Weight.CAUTIONS,
    applies="Where the controller doesn't sit inside the hub.",
    expects="The motor's lead and the controller's lead to the handlebar are together as long as the way.",
    assumes="The controller sits on the way, and no lead is doubled back.",
    source=PART_DATA,
    settled_by=("cable_run_mm",),
    says=Says(
        passed="The way along the frame is {reading}; the leads reach {high}. At worst {margin} in hand.",
        failed="The way along the frame is {reading}; the leads reach {high}. At best {margin} too short.",
        not_known="Lay a string along the frame from the rear axle to the handlebar.",
        remedy="Add an extension lead, or place the controller so that the longer lead bridges the gap.",
    ),
)
def cable_reach(bike: Bike, hub: Hub, controller: Controller) -> Check | Inapplicable | Missing:
    """Two leads in one line."""
    if hub.built_in_controller == controller.id:
        return INSIDE_THE_HUB
    if hub.motor_lead_mm is None:
        return Missing(hub, "motor_lead_mm")
    if controller.bar_lead_mm is None:
        return Missing(controller, "bar_lead_mm")
    leads = hub.motor_lead_mm + controller.bar_lead_mm
    return Check(reading=bike.cable_run_mm, unit="mm", high=of_part(leads))
