"""Parts that are taken from stock for one bike rather than combined: rims, plug adapters."""

from __future__ import annotations

from collections.abc import Iterable

from app.catalogue.hub_parts import Hub
from app.catalogue.wheel_parts import Adapter, Rim
from app.facts.span import THOUSAND, Span
from app.facts.truth import Truth
from app.mechanics.counts import same


def any_of(truths: Iterable[Truth]) -> Truth:
    """Whether at least one holds; no where there is none."""
    found = Truth.NO
    for truth in truths:
        found = found | truth
    return found


def holes_agree(rim_holes: Span, hub: Hub) -> Truth:
    """Whether a rim, of which the count of holes may not be certain, has as many as the hub."""
    return same(rim_holes, Span(hub.spoke_holes * THOUSAND, hub.spoke_holes * THOUSAND))


def rims_for(hub: Hub, rims: Iterable[Rim]) -> tuple[Rim, ...]:
    """The rims of a stock that can be laced to a hub, in their order."""
    return tuple(rim for rim in rims if rim.holes == hub.spoke_holes)


def rim_of(hub: Hub, rims: Iterable[Rim]) -> Rim | None:
    """The rim that a hub comes laced into; None for a bare hub, and where the stock doesn't list it."""
    return next((rim for rim in rims if rim.id == hub.laced_into), None)


def adapter_between(joins: str, of: str, to: str, adapters: Iterable[Adapter]) -> Adapter | None:
    """The first adapter from one plug to the other; None where the stock has none.

    of, to  the plug of the hub, pack or sensor, and that of the controller
    """
    return next((each for each in adapters if (each.joins, each.of, each.to) == (joins, of, to)), None)
