"""The tables of standards, read once at start and handed to the rules: every row says where it comes from."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from types import MappingProxyType
from typing import TypeVar

from app.catalogue.brake_standards import CaliperNearest, CaliperRoom, MountPattern, RotorSize, RotorThickness
from app.catalogue.drivetrain_standards import Chainline, ChainWear, CogPitch, FreehubBody
from app.catalogue.frame_standards import AxleStandard, MaterialRow, RotorPlane, Spread
from app.catalogue.law import Region
from app.catalogue.standard_row import Limit, Row
from app.catalogue.wheel_standards import Anchor, BeadSeat, Fastener, RimTyre, RollOut
from app.facts.span import Span

TABLES: Mapping[str, type[Row]] = MappingProxyType(
    {
        "axle_standards": AxleStandard,
        "rotor_planes": RotorPlane,
        "spreads": Spread,
        "materials": MaterialRow,
        "mount_patterns": MountPattern,
        "rotor_sizes": RotorSize,
        "rotor_thicknesses": RotorThickness,
        "caliper_rooms": CaliperRoom,
        "calipers_nearest": CaliperNearest,
        "freehub_bodies": FreehubBody,
        "cog_pitches": CogPitch,
        "chainlines": Chainline,
        "chain_wear": ChainWear,
        "bead_seats": BeadSeat,
        "rim_tyres": RimTyre,
        "roll_outs": RollOut,
        "fasteners": Fastener,
        "anchors": Anchor,
        "regions": Region,
        "limits": Limit,
    }
)

_Row = TypeVar("_Row", bound=Row)


def _row(rows: Iterable[_Row], name: str) -> _Row:
    found = next((row for row in rows if row.id == name), None)
    if found is None:
        raise KeyError(name)
    return found


@dataclass(frozen=True, eq=False)
class Standards:
    """Every table, in the order of its file. A look-up for a word outside its table is a KeyError: a bug."""

    axle_standards: tuple[AxleStandard, ...]
    rotor_planes: tuple[RotorPlane, ...]
    spreads: tuple[Spread, ...]
    materials: tuple[MaterialRow, ...]
    mount_patterns: tuple[MountPattern, ...]
    rotor_sizes: tuple[RotorSize, ...]
    rotor_thicknesses: tuple[RotorThickness, ...]
    caliper_rooms: tuple[CaliperRoom, ...]
    calipers_nearest: tuple[CaliperNearest, ...]
    freehub_bodies: tuple[FreehubBody, ...]
    cog_pitches: tuple[CogPitch, ...]
    chainlines: tuple[Chainline, ...]
    chain_wear: tuple[ChainWear, ...]
    bead_seats: tuple[BeadSeat, ...]
    rim_tyres: tuple[RimTyre, ...]
    roll_outs: tuple[RollOut, ...]
    fasteners: tuple[Fastener, ...]
    anchors: tuple[Anchor, ...]
    regions: tuple[Region, ...]
    limits: tuple[Limit, ...]

    def limit(self, name: str) -> Limit:
        """A single number that rules decide by."""
        return _row(self.limits, name)

    def axle(self, name: str) -> AxleStandard:
        """A kind of rear end by its id, such as 142x12."""
        return _row(self.axle_standards, name)

    def axles_reading(self, lip_to_lip_mm: Span, dropout_kind: str) -> tuple[AxleStandard, ...]:
        """The rear ends that a reading between the lips can be."""
        return tuple(
            row
            for row in self.axle_standards
            if dropout_kind in row.dropout_kinds and row.lip_to_lip_mm.meets(lip_to_lip_mm)
        )

    def spread(self, material: str, heat_treated: str) -> Spread:
        """How far a rear end may be pulled open or closed; heat treatment matters to steel alone."""
        rows = (row for row in self.spreads if row.material == material)
        found = next((row for row in rows if row.heat_treated in {"any", heat_treated}), None)
        if found is None:
            raise KeyError(material, heat_treated)
        return found

    def material(self, word: str) -> MaterialRow:
        """What dropouts and stays of a material bear."""
        return _row(self.materials, word)

    def mount(self, word: str) -> MountPattern:
        """The mount of a caliper: is, post or flat."""
        return _row(self.mount_patterns, word)

    def body(self, interface: str) -> FreehubBody:
        """A freehub body by its interface."""
        return _row(self.freehub_bodies, interface)

    def chain_limit(self, speeds: int) -> ChainWear | None:
        """The wear at which a chain for so many cogs is changed."""
        return next((row for row in self.chain_wear if speeds in row.speeds), None)

    def rim_tyre(self, inner_width_mm: Span) -> tuple[RimTyre, ...]:
        """The rows that a reading of a rim's inner width lies in: several at a border, none off the table."""
        rows = ((row, Span(row.inner_from_mm.low, row.inner_to_mm.high)) for row in self.rim_tyres)
        return tuple(row for row, reach in rows if reach.meets(inner_width_mm))

    def region(self, word: str) -> Region:
        """The limits of a region."""
        return _row(self.regions, word)

    def fastener(self, name: str) -> Fastener:
        """How tight a fastener is made."""
        return _row(self.fasteners, name)

    def anchor(self, name: str) -> Anchor:
        """What a piece bears where an arm ends."""
        return _row(self.anchors, name)
