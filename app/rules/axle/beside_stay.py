"""Whether the motor's shell, which fills the room between the stays, keeps off them and what sits on them."""

from __future__ import annotations

from app.catalogue.hub_parts import AxleSet, Hub
from app.catalogue.standards import Standards
from app.facts.bike import Bike
from app.mechanics.axial_stack import from_lip
from app.mechanics.rotor_and_stay import LeftStay, shell_to_stay
from app.mechanics.shell_profile import shell_face_of, steps_of
from app.mechanics.stays import per_mm
from app.rules.axle.applies import another_kind, socket_depth
from app.rules.check import Check, Inapplicable, Missing, of_part, of_row
from app.rules.outcome import Weight
from app.rules.rule import PRACTICE, Says, rule


def left_stay(bike: Bike, standards: Standards) -> LeftStay:
    """The stay from what was measured a hand's width in front of the axle."""
    draws_in = standards.limit("stay_draws_in_mm").value
    leans_in = per_mm(draws_in_mm=draws_in, length_mm=bike.chainstay_length_mm)
    read_at = standards.limit("stay_read_at_mm").value
    return LeftStay(bike.stay_lateral_mm, bike.stay_width_mm, leans_in, read_at)


@rule(
    title="The motor shell keeps off the chainstay",
    weight=Weight.CAUTIONS,
    applies="Where the axle set is made for the kind of dropout the bike has.",
    expects="The shell is 2 mm from the left stay's inner side, at its edge as elsewhere.",
    assumes="The stay was measured a hand's width in front of the axle and leans in evenly. "
    "The right stay lies as far out.",
    source=PRACTICE,
    settled_by=("dropout_kind", "socket_depth_mm", "chainstay_length_mm", "stay_lateral_mm", "stay_width_mm"),
    says=Says(
        passed="From stay to motor shell {reading}; {low} is wanted. At worst {margin} in hand.",
        failed="From stay to motor shell {reading}; {low} is wanted. At best {margin} too little.",
        not_known="Measure how far in the middle of the left stay is, and how wide the stay is.",
        remedy="Hold the wheel in and look along both stays. Take a hub with a smaller shell "
        "or an axle set that puts it further in.",
    ),
)
def shell_beside_stay(
    bike: Bike, hub: Hub, axle_set: AxleSet, standards: Standards
) -> Check | Inapplicable | Missing:
    if elsewhere := another_kind(bike, axle_set):
        return elsewhere
    steps, face = steps_of(hub), shell_face_of(axle_set)
    if not steps:
        return Missing(hub, "shell_radius_mm")
    if face is None:
        return Missing(axle_set, "shell_face_mm")
    shell = from_lip(from_floor_mm=face, socket_depth_mm=socket_depth(bike))
    room = shell_to_stay(stay=left_stay(bike, standards), steps=steps, shell_mm=shell)
    return Check(reading=room, unit="mm", low=of_row(standards.limit("beside_stay_mm")))


@rule(
    title="Nothing on the stay stands beside the motor shell",
    weight=Weight.CAUTIONS,
    applies="Where the axle set is made for the kind of dropout the bike has.",
    expects="The next bridge, boss, kickstand plate or cable lies further out than the shell reaches.",
    assumes="What ends the stay's free stretch may stand in towards the wheel.",
    source=PRACTICE,
    settled_by=("dropout_kind", "stay_clear_to_mm"),
    says=Says(
        passed="The stay is free up to {reading} from the axle; the motor shell reaches {low}.",
        failed="The stay is free up to {reading} from the axle; the motor shell reaches {low}.",
        not_known="Measure where the free part of the left stay ends.",
        remedy="Hold the wheel in and look at what sits there: a cable is led elsewhere, "
        "a kickstand comes off, a bridge or boss must clear the shell.",
    ),
)
def shell_beside_bosses(bike: Bike, hub: Hub, axle_set: AxleSet) -> Check | Inapplicable | Missing:
    if elsewhere := another_kind(bike, axle_set):
        return elsewhere
    steps = steps_of(hub)
    if not steps:
        return Missing(hub, "shell_radius_mm")
    return Check(reading=bike.stay_clear_to_mm, unit="mm", low=of_part(steps[-1].radius_mm))
