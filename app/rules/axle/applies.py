"""When a rule about an axle set does not concern the bike: its dropouts are of another kind."""

from __future__ import annotations

from app.catalogue.hub_parts import AxleSet
from app.facts.bike import Bike
from app.facts.span import Span
from app.mechanics.axial_stack import OPEN_DROPOUT
from app.rules.check import Inapplicable

ANOTHER_KIND = Inapplicable("This axle set is for another kind of dropout.")
NO_THRU_AXLE = Inapplicable("This axle set is not held by a thru-axle.")


def another_kind(bike: Bike, axle_set: AxleSet) -> Inapplicable | None:
    """The reason not to ask, or None where the axle set is made for the bike's kind of dropout."""
    return None if bike.dropout_kind in axle_set.dropout_kinds else ANOTHER_KIND


def socket_depth(bike: Bike) -> Span:
    """From the lip to the floor of a dropout, in mm; open dropouts have no socket."""
    return bike.socket_depth_mm if bike.dropout_kind == "thru_axle" else OPEN_DROPOUT


def no_thru_axle(bike: Bike, axle_set: AxleSet) -> Inapplicable | None:
    """The reason not to ask, or None where the frame's thru-axle holds the hub."""
    return another_kind(bike, axle_set) if axle_set.end == "thru" else NO_THRU_AXLE
