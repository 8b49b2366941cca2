"""What the geometry is told of the caliper: the facts that its mount makes worth reading, and no others."""

from __future__ import annotations

from app.catalogue.standards import Standards
from app.facts.bike import Bike
from app.facts.span import Span
from app.mechanics.caliper_envelope import Readings
from app.mechanics.caliper_solids import Tables
from app.mechanics.mounts import IsHoles, PostPath

MOUNT = (
    "caliper_mount",
    "caliper_adapter",
    "rotor_diameter_mm",
    "caliper_line_bearing_deg",
    "rotor_offset_mm",
    "caliper_outboard_depth_mm",
)
NEAR_POINT = ("caliper_nearest_mm", "caliper_bearing_deg")
FAR_POINT = ("caliper_far_mm", "caliper_far_bearing_deg")
NOT_READ = Span(0, 0)


def place_readings(bike: Bike) -> Readings:
    """The caliper seen from the left, without its far end.

    A flat mount says nothing of the caliper; an adapter matters to posts alone.
    """
    flat = bike.caliper_mount == "flat"
    return Readings(
        mount=bike.caliper_mount,
        adapter=bike.caliper_adapter if bike.caliper_mount == "post" else "none",
        rotor_mm=NOT_READ if flat else bike.rotor_diameter_mm,
        line_deg=NOT_READ if flat else bike.caliper_line_bearing_deg,
        rotor_offset_mm=NOT_READ,
        outboard_depth_mm=NOT_READ,
        nearest_mm=bike.caliper_nearest_mm,
        bearing_deg=bike.caliper_bearing_deg,
    )


def near_readings(bike: Bike) -> Readings:
    """The caliper without its far end, and where it lies along the axle."""
    return place_readings(bike)._replace(
        rotor_offset_mm=bike.rotor_offset_mm, outboard_depth_mm=bike.caliper_outboard_depth_mm
    )


def whole_readings(bike: Bike) -> Readings:
    """The caliper with its far end."""
    return near_readings(bike)._replace(
        far_mm=bike.caliper_far_mm, far_bearing_deg=bike.caliper_far_bearing_deg
    )


def tables_of(standards: Standards) -> Tables:
    """The published lengths of the mounts. A table that lacks one is a ValueError: a bug of the data."""
    tab, post = standards.mount("is"), standards.mount("post")
    lengths = (tab.near_hole_mm, tab.far_hole_mm, post.path_deg, post.path_start_mm, post.path_side_mm)
    near, far, path_deg, start, side = (length for length in lengths if length is not None)
    path = PostPath(path_deg, start, side, post.bolt_pitch_mm)
    return Tables(IsHoles(near, far, tab.bolt_pitch_mm), path)
