"""Rear ends made up for the tests of drawings: round numbers, and gaps that one can work out by head."""

from __future__ import annotations

import shapely

from app.drawings.axle_scene import AxleScene, Level, Piece, block
from app.drawings.side_scene import Caliper, Gap, SideScene, Stay

STAY = Stay(falls_deg=8.0, half_height_mm=9.0, offset_mm=2.0, free_mm=(80.0, 170.0))
ARM = shapely.union(shapely.Point(0, 0).buffer(20), shapely.box(0, -8, 150, 8))
CLAMP = shapely.box(110, -12, 132, 14)


def caliper(lowest: float) -> Caliper:
    """A caliper over the arm that may reach down so far, and for sure reaches to 3 mm above that."""
    return Caliper(shapely.box(35, lowest, 95, lowest + 50), shapely.box(38, lowest + 3, 92, lowest + 47))


def side_scene(lowest: float = 10.0, axial: float = -20.0) -> SideScene:
    """Arm and caliper so far apart that the caliper's lowest place is so high over the stay's line."""
    text = f"{lowest - 8:.1f} to {lowest - 5:.1f} mm"
    gap = Gap("arm_caliper", (60, 8), (60, lowest), text, plane=lowest - 8, axial=axial)
    return SideScene(STAY, 80.0, caliper(lowest), ARM, CLAMP, gap, ("The gap is told here.",))


def axle_scene() -> AxleScene:
    """A hub of 135 mm between plates, its shell 2.5 mm from the caliper."""
    pieces = (
        Piece("", "frame", block(-6, 0, 6, 24)),
        Piece("dropout", "frame", block(135, 141, 6, 24)),
        Piece("", "axle", block(0, 135, 0, 6)),
        Piece("arm", "arm", block(0, 6, 6, 22)),
        Piece("rotor", "rotor", block(13.4, 15.2, 17, 80)),
        Piece("motor shell", "shell", block(34, 90, 6, 110)),
        Piece("caliper", "possible", block(-4, 31.5, 50, 92)),
        Piece("", "sure", block(-1, 13, 53, 90)),
    )
    levels = (
        Level("shell_caliper", (31.5, 60), (34, 60), "2.5 to 6.0 mm"),
        Level("dropout_width", (0, 0), (135, 0), "135.0 mm ± 0.3"),
    )
    return AxleScene(pieces, levels, ("Between dropouts 135.0 mm ± 0.3.",))
