"""Whether the controller understands the pedal sensor, and how soon it knows that the rider pedals."""

from __future__ import annotations

from app.catalogue.drive_parts import Controller, Sensor
from app.catalogue.hub_parts import Freehub
from app.facts.bike import Bike
from app.facts.span import Span
from app.facts.truth import Truth
from app.mechanics.pedal_sensing import crank_angle_deg, per_crank_turn
from app.rules.check import Check, Inapplicable, Missing, habit
from app.rules.outcome import Weight
from app.rules.rule import PART_DATA, PRACTICE, Says, rule
from app.rules.sensing.applies import no_sensor

FINE_EDGES = habit(12)

SENSES = {
    "one_wire": "cadence by one wire",
    "two_wire": "cadence and direction by two wires",
    "torque": "torque",
}


@rule(
    title="The controller understands the pedal sensor",
    weight=Weight.BLOCKS,
    applies="Where the controller takes a pedal sensor at all.",
    expects="The controller's maker lists the sensor's kind of signal.",
    assumes="The controller is set to this sensor.",
    source=PART_DATA,
    settled_by=(),
    says=Says(
        passed="The sensor tells {senses}; this controller understands it.",
        failed="The sensor tells {senses}; this controller doesn't understand it.",
        not_known="Ask the maker which pedal sensors the controller understands.",
        remedy="Take a controller for this sensor, or a sensor for this controller.",
    ),
)
def sensor_understood(controller: Controller, sensor: Sensor) -> Check | Inapplicable | Missing:
    """One wire, two wires a quarter pitch apart, and torque are three different inputs."""
    if reason := no_sensor(controller):
        return reason
    understood = Truth.of(yes=sensor.senses in (controller.reads or ()))
    return Check.of_truth(understood, values={"senses": SENSES[sensor.senses]})


def edges_of(bike: Bike, sensor: Sensor, pulses: int, edges_per_pulse: int) -> Span:
    """Edges that the controller counts in one turn of the crank, in the bike's lowest gear."""
    if sensor.sits == "bottom_bracket":
        return Span.exactly(pulses * edges_per_pulse)
    return per_crank_turn(pulses * edges_per_pulse, bike.smallest_chainring, bike.largest_cog)


@rule(
    title="The motor starts soon after the pedals",
    weight=Weight.CAUTIONS,
    applies="Where the controller takes a pedal sensor.",
    expects="In the lowest gear the controller counts at least 12 edges in one turn of the crank; "
    "24 make a prompt start.",
    assumes="The rider starts on the smallest chainring and the largest cog.",
    source=PRACTICE,
    settled_by=("smallest_chainring", "largest_cog"),
    limits=(FINE_EDGES,),
    says=Says(
        passed="In the lowest gear the controller counts {reading} edges in a turn of the crank, "
        "one every {crank_deg}; from {low} the motor starts soon, from 24 promptly.",
        failed="In the lowest gear the controller counts {reading} edges in a turn of the crank, "
        "one every {crank_deg}: the motor starts late.",
        not_known="Count the teeth of the smallest chainring and of the largest cog.",
        remedy="Take a sensor with more pulses or a controller that counts every edge, "
        "or start in a higher gear.",
    ),
)
def edges_per_crank_turn(
    bike: Bike, freehub: Freehub, controller: Controller, sensor: Sensor
) -> Check | Inapplicable | Missing:
    """What counts is what the controller counts, not the poles of the ring."""
    if reason := no_sensor(controller):
        return reason
    pulses = sensor.pulses_per_turn or (freehub.pulses_per_turn if sensor.sits == "freehub" else None)
    if pulses is None:
        return Missing(sensor, "pulses_per_turn")
    if controller.edges_per_pulse is None:
        return Missing(controller, "edges_per_pulse")
    edges = edges_of(bike, sensor, pulses, controller.edges_per_pulse)
    return Check(reading=edges, low=FINE_EDGES, values={"crank_deg": crank_angle_deg(1, edges)})
