"""What a rule sees of a bike and of a wish: exactly the facts that the rule names, and no other.

A number is its span. A choice is one word: where several are still possible, the engine
calls the rule once for each of them, so that a rule branches on known words only.
"""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType
from typing import TYPE_CHECKING

from app.facts.span import Span


class UndeclaredFactError(LookupError):
    """A rule read a fact that it does not list in `settled_by`: a bug in the rule."""


class WordNeeded(Exception):  # noqa: N818 - not an error: the engine catches it and tries each word
    """A choice was read of which several words are still possible."""

    def __init__(self, fact: str) -> None:
        super().__init__(fact)
        self.fact = fact


NO_GAUGES: Mapping[str, str] = MappingProxyType({})


class View:
    """A closed set of facts as attributes; reading another raises UndeclaredFactError.

    gauges  by fact, the name of the paper gauge that its answer was given by
    """

    def __init__(
        self,
        values: Mapping[str, Span | str],
        open_choices: frozenset[str],
        gauges: Mapping[str, str] = NO_GAUGES,
    ) -> None:
        self.__dict__.update(values)
        self.__dict__["_gauges"] = gauges
        self.__dict__["_open_choices"] = open_choices

    def gauge_of(self, fact: str) -> tuple[str, ...]:
        """The marks of the gauge that the answer to a fact was given by; none where none was named."""
        return tuple(self.__dict__["_gauges"].get(fact, "").split())

    if not TYPE_CHECKING:  # a type checker knows the declared facts; this is for the ones that are not there

        def __getattr__(self, name: str) -> Span | str:
            if name in self.__dict__["_open_choices"]:
                raise WordNeeded(name)
            message = f"{name} is not among the facts that this rule says it is settled by."
            raise UndeclaredFactError(message)


class Watched(View):
    """A view that notes which of its facts were read."""

    def __init__(
        self, values: Mapping[str, Span | str], seen: set[str], gauges: Mapping[str, str] = NO_GAUGES
    ) -> None:
        super().__init__({}, frozenset(), gauges)
        self.__dict__["_values"] = values
        self.__dict__["_seen"] = seen

    if not TYPE_CHECKING:

        def __getattr__(self, name: str) -> Span | str:
            values = self.__dict__["_values"]
            if name not in values:
                return super().__getattr__(name)
            self.__dict__["_seen"].add(name)
            return values[name]


class Bike(View):
    """The bike on the stand. Names, units and meanings are those of the table of facts."""

    frame_material: str
    frame_heat_treated: str
    permissible_mass_kg: Span
    rear_suspension: str
    arm_member: str
    dropout_kind: str
    dropout_width_mm: Span
    socket_depth_mm: Span
    slot_width_mm: Span
    thru_axle_diameter_mm: Span
    thru_axle_pitch_mm: str
    thru_axle_length_mm: Span
    thru_axle_thread_length_mm: Span
    thru_axle_head: str
    thru_axle_thread_side: str
    hanger: str
    dropout_thickness_mm: Span
    dropout_face: str

    rear_brake: str
    caliper_mount: str
    caliper_seat: str
    caliper_adapter: str
    rotor_diameter_mm: Span
    frame_rotor_limit_mm: Span
    rotor_fixing: str
    rotor_thickness_mm: Span
    rotor_offset_mm: Span
    caliper_nearest_mm: Span
    caliper_bearing_deg: Span
    caliper_far_mm: Span
    caliper_far_bearing_deg: Span
    caliper_line_bearing_deg: Span
    caliper_inboard_nearest_mm: Span
    caliper_inboard_depth_mm: Span
    caliper_outboard_depth_mm: Span
    gauge_arm_clears: str
    gauge_shell_clears: str

    drivetrain: str
    cassette_interface: str
    cassette_speeds: Span
    smallest_cog: Span
    largest_cog: Span
    smallest_chainring: Span
    largest_chainring: Span
    chainline_mm: Span
    chain_wear: str

    chainstay_length_mm: Span
    stay_material: str
    stay_section: str
    stay_width_mm: Span
    stay_height_mm: Span
    stay_angle_deg: Span
    stay_offset_mm: Span
    stay_lateral_mm: Span
    stay_clear_from_mm: Span
    stay_clear_to_mm: Span
    gauge_clamp_reaches: str

    bead_seat_mm: Span
    tyre_width_mm: Span
    rim_erd_mm: Span
    rim_holes: Span
    rim_inner_width_mm: Span

    cable_run_mm: Span
    controller_present: str
    pack_present: str
    own_pack_full_v: Span
    own_pack_nominal_v: Span
    own_pack_continuous_a: Span
    own_controller_limit_v: Span
    own_controller_battery_a: Span
    own_controller_plug: str


class Wish(View):
    """What the rider wants of the converted bike."""

    total_mass_kg: Span
    cruise_kmh: Span
    steepest_grade_pct: Span
    climb_minutes: Span
    range_km: Span
    posture: str
    assist: str
    back_pedal_regen: str
    region: str
    ambient_c: Span
    surface: str
    altitude_m: Span
    headwind_ms: Span
    rider_power_w: Span
