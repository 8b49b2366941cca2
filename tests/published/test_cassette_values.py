"""Cassettes, chains and threads against published values; each source stands beside its number."""

from __future__ import annotations

import pytest

from app.catalogue.catalogue import Catalogue
from app.catalogue.hub_parts import Freehub
from app.catalogue.wheel_parts import Spacer
from app.facts.answers import Answers, choice, number
from app.facts.span import Span
from app.mechanics.cassette import elongation_pct, inch_thread_mm, spacers_behind, stack_mm
from app.rules.drivetrain.body import cassette_speeds
from app.rules.evaluate import Bench
from app.rules.outcome import Outcome
from tests.demo import demo_standards

A_TENTH = 0.1
A_HUNDREDTH = 0.01
A_THOUSANDTH = 0.001

NOTHING = Catalogue((), (), (), (), (), (), (), ())
HG_FREEHUB = Freehub(id="hg-body", name="HG body", hubs=("a-hub",), interface="hg", smallest_cog=11)


def test_ten_cogs_stand_as_wide_as_was_measured() -> None:
    """Published: 37.2 mm, in "Chainline", ti10x.blogspot.com/2012/10/chainline.html."""
    cogs = next(row for row in demo_standards().cog_pitches if row.speeds == 10)

    stack = stack_mm(cogs)

    assert abs(stack.ends[0] - 37.2) <= A_TENTH


def test_the_road_body_is_longer_by_the_spacer_that_an_older_cassette_needs_on_it() -> None:
    """Published: 1.85 mm, in rolwheels.com/pages/freehub-cassette-compability."""
    road, older = demo_standards().body("hg_road_11").length_mm, demo_standards().body("hg").length_mm
    assert road is not None
    assert older is not None

    longer = road - older

    assert longer == Span.exactly("1.85")


def test_a_road_cassette_of_ten_takes_both_spacers_on_the_road_body() -> None:
    """Published: 1.85 and 1.0 mm add up, both behind the cogs (the same page)."""
    rings = [
        Spacer(
            id=f"ring-{tenths}", name="Ring", thickness_mm=Span(tenths, tenths), interfaces=("hg_road_11",)
        )
        for tenths in (1000, 1850)
    ]

    chosen = spacers_behind(Span.exactly("2.85"), "hg_road_11", rings)

    assert chosen == tuple(rings)


@pytest.mark.parametrize("cogs", [8, 9, 10, 11])
def test_eight_to_eleven_cogs_go_onto_an_hg_body(cogs: int) -> None:
    """Common practice."""
    bike = Answers({})
    bike = bike.with_(choice("drivetrain", ["derailleur"]), choice("cassette_interface", ["hg"]))
    bike = bike.with_(number("cassette_speeds", Span.exactly(cogs)))

    result = Bench(cassette_speeds, bike, NOTHING, demo_standards()).result((HG_FREEHUB,))

    assert result.outcome is Outcome.PASSED


@pytest.mark.parametrize(("longer_in", "wear_pct"), [("0.0625", 0.52), ("0.125", 1.04)])
def test_a_sixteenth_over_a_foot_of_chain_is_half_a_per_cent(longer_in: str, wear_pct: float) -> None:
    """Derived: a chain of half-inch links, read with a foot rule; jacksbikes.com (gauges of 0.5 and 0.75)."""
    assert abs(elongation_pct(longer_in, 12) - wear_pct) <= A_HUNDREDTH


def test_a_freewheel_has_an_inch_thread() -> None:
    """Published: 1.375 in × 24 tpi is 34.925 × 1.058 mm, in the encyclopedia article "Cogset"."""
    diameter, pitch = inch_thread_mm("1.375", 24)

    assert abs(float(diameter) - 34.925) <= A_THOUSANDTH
    assert abs(float(pitch) - 1.058) <= A_THOUSANDTH
