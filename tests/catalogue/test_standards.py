"""The tables of standards: every row says where it comes from, and the look-ups find what a shop asks for."""

from __future__ import annotations

from datetime import date
from itertools import pairwise

import pytest

from app.catalogue.fault import StandardsFaults
from app.catalogue.provenance import Provenance
from app.catalogue.standard_row import Row, Speed
from app.catalogue.standards import TABLES
from app.catalogue.standards_text import load_standards
from app.facts.span import Span
from app.facts.table import FACTS
from tests.demo import SEED_DATA, demo_standards, texts_in

ROWS = [
    pytest.param(row, id=f"{table} {row.id}") for table in TABLES for row in getattr(demo_standards(), table)
]
NOT_A_PUBLICATION = {"from memory", "common practice"}
PUBLISHED_OR_WORKED_OUT = {Provenance.PUBLISHED, Provenance.DERIVED}


@pytest.mark.parametrize("row", ROWS)
def test_a_row_names_its_source_and_the_kind_of_source_agrees(row: Row) -> None:
    if row.provenance is Provenance.MEMORY:
        assert row.source == "from memory"
    if row.provenance in PUBLISHED_OR_WORKED_OUT:
        assert row.source not in NOT_A_PUBLICATION
    assert row.provenance not in {Provenance.PART, Provenance.MEASURED}


@pytest.mark.parametrize("row", ROWS)
def test_a_value_that_is_less_sure_than_its_row_says_so(row: Row) -> None:
    weaker = [row.provenance_of(field) for field in row.less_sure]

    assert all(provenance is not row.provenance for provenance in weaker)


def test_a_floor_is_two_sockets_wider_than_the_lip() -> None:
    for row in demo_standards().axle_standards:
        sockets = row.floor_to_floor_mm - row.lip_to_lip_mm
        assert sockets.holds(row.socket_depth_mm.times(2)), row.id


def test_the_rotor_stands_at_the_same_place_from_the_lip_whatever_the_socket() -> None:
    by_width = {row.over_locknut_mm: row for row in demo_standards().axle_standards}
    for row in demo_standards().rotor_planes:
        socket = by_width[row.over_locknut_mm].socket_depth_mm
        assert row.end_to_inner_face_mm - socket == row.lip_to_inner_face_mm, row.id


def test_a_closed_reading_of_135_can_be_three_rear_ends_and_a_slot_only_two() -> None:
    standards = demo_standards()
    reading = Span.around("135", "0.3")

    closed = [row.id for row in standards.axles_reading(reading, "thru_axle")]
    slotted = [row.id for row in standards.axles_reading(reading, "slotted_vertical")]

    assert closed == ["135x10", "135x12", "142x12"]
    assert slotted == ["135-qr", "135x10"]


@pytest.mark.parametrize(
    ("material", "heat_treated", "opens_mm"),
    [
        ("steel", "no", 5),
        ("steel", "yes", 3),
        ("aluminium", "no", 1),
        ("carbon", "yes", 0),
        ("other", "no", 0),
    ],
)
def test_how_far_a_rear_end_may_be_opened(material: str, heat_treated: str, opens_mm: int) -> None:
    assert demo_standards().spread(material, heat_treated).opens_mm == Span.exactly(opens_mm)


@pytest.mark.parametrize(
    ("body", "cassette", "speeds", "spacer_mm"),
    [
        ("hg", "hg", 9, "0"),
        ("hg", "hg_short_7", 7, "4..4.5"),
        ("hg", "hg_road_11", 11, None),
        ("hg_road_11", "hg", 9, "1.85"),
        ("hg_road_11", "hg_road_11", 11, "0"),
        ("hg_road_11", "road_12_spline", 12, "0"),
        ("road_12_spline", "hg_road_11", 11, None),
        ("xdr", "xd", 12, "1.85"),
        ("xd", "xdr", 12, None),
        ("micro_spline", "hg", 11, None),
        ("threaded_freewheel", "threaded_freewheel", 7, "0"),
    ],
)
def test_which_cassette_goes_onto_which_body(
    body: str, cassette: str, speeds: int, spacer_mm: str | None
) -> None:
    fit = demo_standards().body(body).fits(cassette, speeds)

    if spacer_mm is None:
        assert fit is None
    else:
        assert fit is not None
        low, _, high = spacer_mm.partition("..")
        assert fit.spacer_mm == Span.between(low, high or low)


def test_eight_to_eleven_speeds_go_onto_the_hg_body() -> None:
    """Common practice; no source."""
    body = demo_standards().body("hg")

    assert all(body.fits("hg", speeds) for speeds in (8, 9, 10, 11))


def test_every_word_of_the_table_of_facts_is_found() -> None:
    standards = demo_standards()
    words = {name: [word.word for word in FACTS[name].words] for name in ("frame_material", "region")}  # type: ignore[union-attr]

    assert [standards.material(word).id for word in words["frame_material"]] == words["frame_material"]
    assert [standards.region(word).id for word in words["region"]] == words["region"]
    assert all(standards.spread(word, "no") for word in words["frame_material"])


def test_a_speed_in_miles_is_read_in_kilometres() -> None:
    """20 mph are 32.18688 km/h, which is not a whole number of thousandths."""
    assert demo_standards().region("us_class_1").speed_kmh == Span.between("32.186", "32.187")
    assert Speed.model_validate({"value": "25"}).kmh == Span.exactly(25)


def test_a_region_says_when_it_was_last_looked_up_and_where() -> None:
    for region in demo_standards().regions:
        assert region.last_checked >= date(2026, 1, 1)
        assert region.pointer


def test_a_limit_knows_whether_the_number_itself_is_still_allowed() -> None:
    standards = demo_standards()

    assert standards.region("us_federal").power_excluded
    assert not standards.region("us_class_1").power_excluded
    assert standards.region("eu").speed_excluded


def test_a_rim_between_two_rows_is_in_both() -> None:
    rows = demo_standards().rim_tyre(Span.around("18", "0.3"))

    assert [row.id for row in rows] == ["i17", "i19"]


def test_a_rim_that_no_row_reaches_is_in_none() -> None:
    assert demo_standards().rim_tyre(Span.exactly(70)) == ()


def test_the_rows_of_rims_touch_each_other() -> None:
    rows = demo_standards().rim_tyres

    assert all(lower.inner_to_mm == upper.inner_from_mm for lower, upper in pairwise(rows))


def test_a_word_that_no_table_holds_is_a_key_error() -> None:
    with pytest.raises(KeyError):
        demo_standards().limit("no_such_limit")


def test_every_limit_is_looked_up_by_a_rule() -> None:
    app = SEED_DATA.parent / "app"
    texts = [
        path.read_text("utf-8") for layer in ("mechanics", "rules") for path in (app / layer).rglob("*.py")
    ]

    rules = "".join(texts)
    assert [limit.id for limit in demo_standards().limits if f'"{limit.id}"' not in rules] == []


def test_a_table_that_is_missing_or_strange_is_named() -> None:
    texts = texts_in("standards") | {"moons.yaml": "[]"}
    del texts["anchors.yaml"]

    with pytest.raises(StandardsFaults) as raised:
        load_standards(texts)

    assert [fault.file for fault in raised.value.faults] == ["anchors.yaml", "moons.yaml"]


@pytest.mark.parametrize(
    ("row", "field"),
    [
        ("{id: x, name: X, force_n: 5, provenance: memory}", "source"),
        ("{id: x, name: X, force_n: 5, source: from memory}", "provenance"),
        ("{id: x, name: X, force_n: 5, provenance: hearsay, source: a friend}", "provenance"),
        ("{id: x, name: X, force_n: much, provenance: memory, source: from memory}", "force_n"),
        (
            "{id: x, name: X, force_n: 5, provenance: memory, source: s, less_sure: {colour: memory}}",
            "less_sure.colour",
        ),
    ],
)
def test_a_row_without_a_source_or_with_a_strange_value_is_refused(row: str, field: str) -> None:
    texts = texts_in("standards") | {"anchors.yaml": f"- {row}"}

    with pytest.raises(StandardsFaults) as raised:
        load_standards(texts)

    assert [(fault.part, fault.field) for fault in raised.value.faults] == [("x", field)]
