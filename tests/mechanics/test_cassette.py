"""Spacers that add up, and the wear at which a chain is changed."""

from __future__ import annotations

import pytest

from app.catalogue.wheel_parts import Spacer
from app.facts.span import Span
from app.mechanics.cassette import chain_limit_pct, spacers_behind
from tests.demo import demo_standards


def spacer(slug: str, thickness_mm: str, *bodies: str) -> Spacer:
    return Spacer.model_validate(
        {"id": slug, "name": slug, "thickness_mm": thickness_mm, "interfaces": bodies or ("hg",)}
    )


STOCK = (
    spacer("a-thin", "1.0"),
    spacer("b-road", "1.85"),
    spacer("c-seven", "4.2"),
    spacer("d-seven", "4.5"),
)


def ids(needed: Span, body: str = "hg") -> tuple[str, ...] | None:
    found = spacers_behind(needed, body, STOCK)
    return None if found is None else tuple(each.id for each in found)


def test_no_spacer_goes_behind_a_cassette_that_needs_none() -> None:
    assert ids(Span(0, 0)) == ()


def test_one_spacer_is_taken_before_two() -> None:
    assert ids(Span.between(4, "4.5")) == ("c-seven",)


def test_two_spacers_add_up() -> None:
    assert ids(Span.exactly("2.85")) == ("a-thin", "b-road")


def test_a_spacer_for_another_body_is_left_where_it_is() -> None:
    assert ids(Span.exactly("1.85"), body="xdr") is None


def test_what_cannot_be_made_up_is_said_to_be_missing() -> None:
    assert ids(Span.exactly(3)) is None


@pytest.mark.parametrize(
    ("speeds", "limit"), [(Span.exactly(9), "0.75"), (Span.exactly(10), "0.75"), (Span.exactly(11), "0.5")]
)
def test_a_narrow_chain_is_changed_sooner(speeds: Span, limit: str) -> None:
    assert chain_limit_pct(speeds, demo_standards().chain_wear) == Span.exactly(limit)


def test_cogs_that_were_not_counted_leave_both_limits_open() -> None:
    assert chain_limit_pct(Span.between(9, 12), demo_standards().chain_wear) == Span.between("0.5", "0.75")


def test_a_count_that_no_row_names_takes_the_nearest() -> None:
    rows = tuple(row for row in demo_standards().chain_wear if 8 in row.speeds or 11 in row.speeds)

    assert chain_limit_pct(Span.exactly(3), rows) == Span.exactly("0.75")
    assert chain_limit_pct(Span.exactly(14), rows) == Span.exactly("0.5")
