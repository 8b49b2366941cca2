"""What must agree between parts: ids that are named exist, and no hub stands without what makes it a kit."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Mapping, Sequence

from app.catalogue.fault import Fault, shown
from app.catalogue.part import Part

Parts = Mapping[str, Sequence[Part]]

# The file, its field that names other parts, and the file that those are in.
LINKS = (
    ("windings", "hub", "hubs"),
    ("axle_sets", "hubs", "hubs"),
    ("torque_arms", "axle_sets", "axle_sets"),
    ("freehubs", "hubs", "hubs"),
    ("sensors", "freehubs", "freehubs"),
    ("hubs", "laced_into", "rims"),
    ("hubs", "built_in_controller", "controllers"),
    ("packs", "built_in_controller", "controllers"),
)
# Every part of the second file must be named by one of the first, and the words for its lack.
NEEDED = (
    ("windings", "hub", "hubs", "no winding names this hub; a hub has at least one"),
    ("axle_sets", "hubs", "hubs", "no axle set names this hub, so it goes into no bike"),
    ("freehubs", "hubs", "hubs", "no freehub names this hub, so it takes no cassette"),
    (
        "torque_arms",
        "axle_sets",
        "axle_sets",
        "no torque arm names this axle set, so nothing holds its torque",
    ),
)


def repeated_ids(file: str, ids: Sequence[str]) -> Iterator[Fault]:
    """Ids that stand more than once in one file."""
    for part_id, times in Counter(ids).items():
        if times > 1:
            yield Fault(file, part_id, "id", f"stands {times} times; an id belongs to one part")


def _named(part: Part, field: str) -> tuple[str, ...]:
    value: str | tuple[str, ...] | None = getattr(part, field)
    return (value,) if isinstance(value, str) else value or ()


def links_that_lead_nowhere(parts: Parts, ids: Mapping[str, frozenset[str] | None]) -> Iterator[Fault]:
    """Ids that are named but not there.

    ids  by kind, those of parts with faults of their own too; None for a file that can't be read at all
    """
    for plural, field, target in LINKS:
        known = ids[target]
        for part in parts[plural]:
            for name in _named(part, field):
                if known is not None and name not in known:
                    message = f"{shown(name)} is not in {target}.yaml; there: {_few(known)}"
                    yield Fault(f"{plural}.yaml", part.id, field, message)


def parts_left_alone(parts: Parts) -> Iterator[Fault]:
    """Parts that nothing names, where a kit needs it; only meaningful when every part could be read."""
    for plural, field, target, message in NEEDED:
        named = {name for part in parts[plural] for name in _named(part, field)}
        for part in parts[target]:
            if part.id not in named:
                yield Fault(f"{target}.yaml", part.id, "", message)


def sensors_without_their_freehub(parts: Parts) -> Iterator[Fault]:
    """Torque is sensed in the freehub body itself, so a torque sensor names torque-sensing freehubs only."""
    plain = {part.id for part in parts["freehubs"] if not getattr(part, "torque_sensing", False)}
    for part in parts["sensors"]:
        for name in _named(part, "freehubs"):
            if getattr(part, "senses", "") == "torque" and name in plain:
                message = (
                    f"{shown(name)} senses no torque; a torque sensor names freehubs with torque_sensing"
                )
                yield Fault("sensors.yaml", part.id, "freehubs", message)


def _few(ids: frozenset[str]) -> str:
    listed = sorted(ids)
    return ", ".join(listed[:8]) + (", …" if len(listed) > 8 else "") if listed else "nothing"  # noqa: PLR2004 - a line's worth
