"""Whether the kit assists in the way that the rider wishes."""

from __future__ import annotations

from app.catalogue.drive_parts import Controller, Sensor
from app.catalogue.hub_parts import Hub
from app.facts.bike import Wish
from app.facts.truth import Truth
from app.rules.check import Check, Inapplicable, Missing
from app.rules.outcome import Weight
from app.rules.rule import PART_DATA, Says, Source, rule

QUADRATURE = Source(
    "Two wires a quarter pitch apart tell the direction", "creative-robotics.com/quadrature-intro"
)


@rule(
    title="The pedals bring the wished kind of assist",
    weight=Weight.CAUTIONS,
    applies="Where the rider wishes assist by cadence or by torque.",
    expects="The controller understands the sensor; for assist by torque, the sensor senses torque.",
    assumes="The controller is set to this kind of assist.",
    source=PART_DATA,
    settled_by=("assist",),
    of_wish=True,
    says=Says(
        passed="Wished: assist by {assist}; sensor and controller give it.",
        failed="Wished: assist by {assist}; sensor and controller don't give it.",
        not_known="Ask the rider: by turning the cranks, by pressure on the pedals, or by hand.",
        remedy="For assist by torque take a torque-sensing freehub with its sensor, and a controller "
        "that reads it; for assist by cadence any pedal sensor that the controller reads.",
    ),
)
def pedal_assist(wish: Wish, controller: Controller, sensor: Sensor) -> Check | Inapplicable | Missing:
    """Torque can't be had from a sensor that sees the cranks turn and no more."""
    if wish.assist == "throttle":
        return Inapplicable("The rider wishes a throttle.")
    if controller.reads is None:
        return Missing(controller, "reads")
    enough = wish.assist == "cadence" or sensor.senses == "torque"
    given = Truth.of(yes=enough and sensor.senses in controller.reads)
    return Check.of_truth(given, values={"assist": wish.assist})


@rule(
    title="The controller takes the wished throttle",
    weight=Weight.CAUTIONS,
    applies="Where the rider wishes a throttle.",
    expects="A throttle can be joined to the controller.",
    assumes="The throttle is bought with the kit.",
    source=PART_DATA,
    settled_by=("assist",),
    of_wish=True,
    says=Says(
        passed="Wished: a throttle; this controller takes one.",
        failed="Wished: a throttle; this controller takes none.",
        not_known="Ask the rider: by turning the cranks, by pressure on the pedals, or by hand.",
        remedy="Take a controller to which a throttle can be joined.",
    ),
)
def throttle_assist(wish: Wish, controller: Controller) -> Check | Inapplicable:
    """Whether one may be used on the road is asked elsewhere."""
    if wish.assist != "throttle":
        return Inapplicable("The rider wishes assist from the pedals.")
    return Check.of_truth(Truth.of(yes=controller.throttle))


@rule(
    title="Pedalling backwards brakes with the motor",
    weight=Weight.CAUTIONS,
    applies="Where the rider wishes it.",
    expects="The sensor tells the direction by two wires, the controller reads them, "
    "and both hub and controller regenerate.",
    assumes="The bike has no coaster brake, which would brake first.",
    source=QUADRATURE,
    settled_by=("back_pedal_regen",),
    of_wish=True,
    says=Says(
        passed="Sensor, controller and hub can brake by back-pedalling.",
        failed="Not all of sensor, controller and hub can brake by back-pedalling.",
        not_known="Ask the rider whether back-pedalling should brake with the motor.",
        remedy="Take a two-wire sensor, a controller that reads it and regenerates, "
        "and a hub without a clutch.",
    ),
)
def regen_needs_quadrature(
    wish: Wish, hub: Hub, controller: Controller, sensor: Sensor
) -> Check | Inapplicable | Missing:
    """On one wire, back-pedalling looks like pedalling; behind a clutch, the motor can't brake."""
    if wish.back_pedal_regen != "yes":
        return Inapplicable("The rider doesn't wish to brake by back-pedalling.")
    if controller.reads is None:
        return Missing(controller, "reads")
    told = sensor.senses == "two_wire" and "two_wire" in controller.reads
    return Check.of_truth(Truth.of(yes=told and hub.regenerates and controller.regenerates))
