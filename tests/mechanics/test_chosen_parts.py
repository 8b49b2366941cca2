"""Parts that are taken from stock for one bike."""

from __future__ import annotations

from app.catalogue.hub_parts import Hub
from app.catalogue.wheel_parts import Adapter
from app.facts.span import Span
from app.facts.truth import Truth
from app.mechanics.chosen_parts import adapter_between, any_of, holes_agree, rim_of, rims_for
from tests.demo import demo_catalogue

ADAPTER = Adapter(id="six-to-nine", name="Six to nine", joins="motor_plug", of="round_6", to="round_9")


def bare_hub() -> Hub:
    return next(hub for hub in demo_catalogue().hubs if hub.laced_into is None)


def test_one_that_holds_is_enough() -> None:
    assert any_of([Truth.NO, Truth.YES, Truth.UNKNOWN]) is Truth.YES
    assert any_of([Truth.NO, Truth.UNKNOWN]) is Truth.UNKNOWN
    assert any_of([]) is Truth.NO


def test_a_rim_with_as_many_holes_can_be_laced() -> None:
    hub = bare_hub()

    assert holes_agree(Span.exactly(hub.spoke_holes), hub) is Truth.YES
    assert holes_agree(Span.exactly(hub.spoke_holes + 4), hub) is Truth.NO
    assert holes_agree(Span.between(16, 48), hub) is Truth.UNKNOWN


def test_only_rims_with_the_hubs_holes_are_offered() -> None:
    hub = bare_hub()

    offered = rims_for(hub, demo_catalogue().rims)

    assert offered
    assert {rim.holes for rim in offered} == {hub.spoke_holes}


def test_a_ready_laced_hub_names_its_rim() -> None:
    hub = next(hub for hub in demo_catalogue().hubs if hub.laced_into is not None)

    rim = rim_of(hub, demo_catalogue().rims)

    assert rim is not None
    assert rim.id == hub.laced_into
    assert rim_of(bare_hub(), demo_catalogue().rims) is None


def test_an_adapter_joins_one_way_and_one_kind_of_plug() -> None:
    assert adapter_between("motor_plug", "round_6", "round_9", [ADAPTER]) == ADAPTER
    assert adapter_between("motor_plug", "round_9", "round_6", [ADAPTER]) is None
    assert adapter_between("pack_plug", "round_6", "round_9", [ADAPTER]) is None
