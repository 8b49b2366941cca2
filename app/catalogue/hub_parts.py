"""The hub and what goes into and onto it: windings, axle sets, torque arms, freehubs."""

from __future__ import annotations

from fractions import Fraction
from typing import ClassVar, Literal, TypeAlias

from pydantic import Field

from app.catalogue.along_axle import CogSeat, ShellPart, StackedPart
from app.catalogue.dimension import Dimension
from app.catalogue.outline import Outline
from app.catalogue.part import DropoutKind, Interface, Part, Plug, RotorFixing, Section, Slug
from app.facts.span import Span

# What an arm can end in; the words are the rows of the table of anchors.
Fastening: TypeAlias = Literal[
    "is_hole", "post_or_flat_boss", "two_half_clamp", "band_12", "two_bands_12", "band_9", "strap"
]


class Hub(ShellPart):
    """A motor hub. Torque is at the wheel."""

    kind: ClassVar[str] = "hub"

    motor: Literal["direct_drive", "geared"]
    spoke_holes: int = Field(ge=12, le=48)
    brakes: tuple[Literal["disc", "rim", "none"], ...] = Field(description="Rear brakes that can stay.")
    drivetrains: tuple[Literal["derailleur", "single_speed"], ...]
    rotor_fixing: RotorFixing | None = Field(default=None, description="None where the hub carries no rotor.")
    rotor_smallest_mm: Dimension | None = None
    rotor_largest_mm: Dimension | None = None
    bead_seat_smallest_mm: Dimension
    bead_seat_largest_mm: Dimension
    laced_into: Slug | None = Field(
        default=None, description="The rim it comes laced into; none for a bare hub."
    )
    load_limit: Literal["hub", "frame"] = Field(
        default="hub", description="Whose limit of mass holds; frame where the maker sets none of the hub's."
    )
    largest_total_mass_kg: Dimension | None = Field(default=None, description="Rider, bike and load.")
    peak_torque_nm: Dimension | None = Field(
        default=None, description="At the wheel, as the maker states it."
    )
    rated_power_w: Dimension | None = Field(default=None, description="Continuous.")
    regenerates: bool = False
    pole_pairs: int | None = Field(default=None, ge=1, le=100, description="Of a direct drive's magnet ring.")
    largest_cog: int | None = Field(default=None, description="Teeth that clear the drive-side cover.")
    motor_plug: Plug | None = None
    motor_lead_mm: Dimension | None = Field(default=None, description="From the axle to the plug.")
    built_in_controller: Slug | None = Field(default=None, description="The controller inside its shell.")


class Winding(Part):
    """One winding of one hub: the speed it gives for a volt, and the resistance between two phase leads."""

    kind: ClassVar[str] = "winding"

    hub: Slug
    kv_rpm_per_v: Dimension = Field(description="At the wheel, per volt of peak line-to-line back-emf.")
    resistance_ohm: Dimension = Field(description="Line to line at 20 °C.")
    turns: int | None = Field(default=None, ge=1)
    inductance_mh: Dimension | None = Field(default=None, description="Line to line.")
    phase_current_limit_a: Dimension | None = None


class AxleSet(StackedPart):
    """What turns a hub into one for one kind of rear end. Lengths run along the axle, from the left face."""

    kind: ClassVar[str] = "axle_set"

    hubs: tuple[Slug, ...] = Field(min_length=1)
    end: Literal["quick_release", "bolt_on", "thru"]
    dropout_kinds: tuple[DropoutKind, ...] = Field(min_length=1)
    takes_low_mm: Dimension = Field(description="Narrowest rear end it goes into, floor to floor.")
    takes_high_mm: Dimension = Field(description="Widest rear end it goes into, floor to floor.")
    over_locknut_mm: Dimension
    slot_needs_mm: Dimension | None = Field(
        default=None, description="Axle end across, slotted dropouts only."
    )
    flatted: bool = Field(default=False, description="Flats in the slots carry torque.")
    thru_diameter_mm: Dimension | None = None
    thru_pitches: tuple[Literal["1.0", "1.5", "1.75"], ...] = Field(
        default=(), description="Threads the frame's own thru-axle may have."
    )
    thru_heads: tuple[Literal["flat", "conical", "recessed"], ...] = ()
    under_head_mm: Dimension | None = Field(
        default=None, description="What it adds under the thru-axle's head."
    )
    axle_length_mm: Dimension | None = Field(default=None, description="End to end, slotted dropouts only.")
    axle_thread_mm: Dimension | None = Field(default=None, description="12 for M12, bolt-on axles.")
    nut_height_mm: Dimension | None = None
    washers_mm: Dimension | None = Field(
        default=None, description="Washers on one side, torque washer included."
    )
    flat_face_radius_mm: Dimension | None = Field(
        default=None, description="Radius that must lie flat on the left."
    )
    rotor_seat_mm: Dimension | None = Field(default=None, description="Left floor to the rotor's inner face.")
    rotor_shims_mm: Dimension | None = Field(
        default=None, description="Most shims under the rotor or caliper."
    )
    shell_face_mm: Dimension | None = Field(default=None, description="Left floor to the motor shell.")
    rear_chainline_mm: Dimension | None = Field(
        default=None, description="Centre plane to the middle of the cogs."
    )
    sleeve_diameter_mm: Dimension | None = Field(
        default=None, description="What must pass through the freehub."
    )
    hangers: tuple[Literal["fixed", "replaceable", "axle_clamped", "none"], ...] = Field(
        default=("fixed", "replaceable", "none"), description="Hangers whose drive-side face it can take."
    )
    carbon_approved: bool = Field(
        default=False, description="Torque path to a metal mount, approved for carbon."
    )
    tightening_nm: Dimension | None = None


class TorqueArm(Part):
    """A torque arm. Axial lengths run from the left dropout's inner face inboard, radii from the axle."""

    kind: ClassVar[str] = "torque_arm"

    axle_sets: tuple[Slug, ...] = Field(min_length=1)
    anchor: Literal["stay_clamp", "mount_bolt"]
    disc_radius_mm: Dimension
    bar_half_width_mm: Dimension
    outline: Outline = Field(
        default=(),
        description="Corners seen from the left: axle at 0, 0, bar along the first number. "
        "The disc belongs to it; none for a straight bar.",
    )
    holes: tuple[Outline, ...] = Field(default=(), description="Corners of each hole, the axle's among them.")
    index_angles_deg: tuple[Dimension, ...] = Field(
        default=(), description="Angles at which it can sit on the axle; none where it has only 0."
    )
    index_from_deg: Dimension | None = Field(default=None, description="Least angle of an arm that turns.")
    index_to_deg: Dimension | None = Field(default=None, description="Most angle of an arm that turns.")
    level_from_deg: Dimension | None = Field(
        default=None, description="Least angle of the bar above level, with flats in a level or upright slot."
    )
    level_to_deg: Dimension | None = Field(default=None, description="Most angle of it.")
    outer_face_mm: Dimension = Field(description="Inner face of the dropout to the arm's outboard face.")
    inner_face_mm: Dimension = Field(description="Inner face of the dropout to the arm's inboard face.")
    clearance_mm: Dimension | None = Field(default=None, description="Running clearance the maker wants.")
    reach_from_mm: Dimension
    reach_to_mm: Dimension
    clamp_length_mm: Dimension = Field(description="Stretch of stay that the clamp covers.")
    clamp_places_mm: tuple[Dimension, ...] = Field(
        default=(),
        description="Holes for the clamp, axle to its middle; empty for one that slides along the reach.",
    )
    swivel_in_plane_deg: Dimension | None = Field(
        default=None, description="Clamp against bar to either side, seen from the left."
    )
    swivel_across_deg: Dimension | None = Field(
        default=None, description="Clamp against bar to either side, seen from above."
    )
    fastening: Fastening | None = Field(default=None, description="What holds its end.")
    holds_braking: bool | None = Field(
        default=None, description="False where its end leans on one side of the stay alone."
    )
    liner_mm: Dimension | None = Field(default=None, description="Rubber that comes with the clamp.")
    sections: tuple[Section, ...] = ()
    clamp_width_low_mm: Dimension | None = None
    clamp_width_high_mm: Dimension | None = None
    clamp_height_low_mm: Dimension | None = None
    clamp_height_high_mm: Dimension | None = None
    offset_low_mm: Dimension | None = Field(
        default=None, description="Stay's centre line above or below the axle."
    )
    offset_high_mm: Dimension | None = None
    lateral_low_mm: Dimension | None = Field(
        default=None, description="Stay's centre plane inboard of the face."
    )
    lateral_high_mm: Dimension | None = None
    rated_force_n: Dimension | None = Field(default=None, description="At the clamp, driving.")
    rated_reverse_force_n: Dimension | None = Field(default=None, description="At the clamp, braking.")
    arms: int = Field(default=1, ge=1, le=2)
    tightening_nm: Dimension | None = None

    @property
    def clamp_may_be(self) -> Span:
        """Where the clamp's middle may be along the bar, so that the whole clamp is within reach."""
        half = self.clamp_length_mm.times(Fraction(1, 2))
        nearest, farthest = self.reach_from_mm.low + half.low, self.reach_to_mm.high - half.low
        return Span(nearest, max(nearest, farthest))


class Freehub(CogSeat):
    """A freehub body."""

    kind: ClassVar[str] = "freehub"

    hubs: tuple[Slug, ...] = Field(min_length=1)
    interface: Interface
    smallest_cog: int = Field(ge=9, le=20)
    bore_mm: Dimension | None = Field(default=None, description="Largest sleeve that passes through.")
    torque_sensing: bool = False
    pulses_per_turn: int | None = Field(default=None, ge=1, description="Of the body, for each wire.")
