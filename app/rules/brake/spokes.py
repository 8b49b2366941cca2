"""Whether the caliper's inner half keeps off the spokes that leave the left flange."""

from __future__ import annotations

from app.catalogue.hub_parts import AxleSet, Hub
from app.catalogue.standards import Standards
from app.facts.bike import Bike
from app.facts.span import Span
from app.mechanics.axial_stack import shell_to_caliper
from app.mechanics.spokes_beside_caliper import Spokes, to_heads, to_spokes
from app.rules.axle.applies import another_kind, socket_depth
from app.rules.brake.applies import no_rotor
from app.rules.brake.shell_clearance import RUNNING
from app.rules.check import Check, Inapplicable, Missing
from app.rules.outcome import Weight
from app.rules.rule import PRACTICE, Says, rule

HEADS = {"in": "inside", "out": "outside", "both": "on both sides"}


def _spokes(hub: Hub) -> Spokes | Missing:
    """The left flange with its spokes, or the value that is missing for it."""
    pcd, flange, thickness = hub.flange_left_pcd_mm, hub.flange_left_mm, hub.flange_thickness_mm
    if pcd is None:
        return Missing(hub, "flange_left_pcd_mm")
    if flange is None:
        return Missing(hub, "flange_left_mm")
    if thickness is None:
        return Missing(hub, "flange_thickness_mm")
    if hub.spoke_heads_left is None:
        return Missing(hub, "spoke_heads_left")
    return Spokes.of(heads=hub.spoke_heads_left, pcd_mm=pcd, flange_mm=flange, thickness_mm=thickness)


def _heads_gap(bike: Bike, spokes: Spokes, room_mm: Span, standards: Standards) -> Span:
    return to_heads(
        spokes=spokes,
        head_height_mm=standards.limit("spoke_head_mm").value,
        head_radius_mm=standards.limit("spoke_head_radius_mm").value,
        room_mm=room_mm,
        nearest_mm=bike.caliper_inboard_nearest_mm,
    )


def _spokes_gap(bike: Bike, spokes: Spokes, room_mm: Span, standards: Standards) -> Span:
    return to_spokes(
        spokes=spokes,
        spoke_mm=standards.limit("spoke_mm").value,
        room_mm=room_mm,
        rotor_diameter_mm=bike.rotor_diameter_mm,
        beyond_rotor_mm=standards.limit("caliper_beyond_rotor_mm").value,
    )


def _gap(bike: Bike, spokes: Spokes, face_mm: Span, standards: Standards) -> Span:
    """To what lies outside of the flange: heads, or spokes, or both where every other head is inside."""
    room = shell_to_caliper(
        shell_face_mm=face_mm,
        socket_depth_mm=socket_depth(bike),
        rotor_offset_mm=bike.rotor_offset_mm,
        inboard_depth_mm=bike.caliper_inboard_depth_mm,
    )
    if spokes.heads == "out":
        return _heads_gap(bike, spokes, room, standards)
    outside = _spokes_gap(bike, spokes, room, standards)
    return outside if spokes.heads == "in" else outside.at_most(_heads_gap(bike, spokes, room, standards))


@rule(
    title="The caliper keeps off the spokes",
    weight=Weight.CAUTIONS,
    applies="Where a disc brake stays and the axle set is made for the kind of dropout the bike has.",
    expects="Spokes and spoke heads at the left flange are 1.5 mm from the caliper's inner half.",
    assumes="The inner half reaches as far in from its nearest point to beyond the rotor's edge as its "
    "innermost point does. Spokes run straight out from the flange.",
    source=PRACTICE,
    settled_by=(
        *("rear_brake", "dropout_kind", "socket_depth_mm", "rotor_offset_mm", "rotor_diameter_mm"),
        *("caliper_inboard_nearest_mm", "caliper_inboard_depth_mm"),
    ),
    limits=(RUNNING,),
    says=Says(
        passed="Gap between caliper and spokes, their heads {heads}: {reading}; {low} is wanted. "
        "At worst {margin} in hand.",
        failed="Gap between caliper and spokes, their heads {heads}: {reading}; {low} is wanted. "
        "At best {margin} too little.",
        not_known="Wheel out: measure how near the caliper's inner half comes to the axle and how far in "
        "it reaches, the rotor's size and its distance from the dropout.",
        remedy="Lace the left flange with all heads outside where the hub's maker allows it, "
        "or take a slimmer caliper. Turn the loaded wheel and look for marks on the spokes.",
    ),
)
def caliper_spokes(
    bike: Bike, hub: Hub, axle_set: AxleSet, standards: Standards
) -> Check | Inapplicable | Missing:
    if elsewhere := no_rotor(bike, hub) or another_kind(bike, axle_set):
        return elsewhere
    spokes, face = _spokes(hub), axle_set.shell_face_mm
    if isinstance(spokes, Missing):
        return spokes
    if face is None:
        return Missing(axle_set, "shell_face_mm")
    gap = _gap(bike, spokes, face, standards)
    return Check(reading=gap, unit="mm", low=RUNNING, values={"heads": HEADS[spokes.heads]})
