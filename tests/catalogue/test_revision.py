"""A catalogue's revision follows what it says, not how it is written down."""

from __future__ import annotations

from app.catalogue.text import load_catalogue
from tests.catalogue.small_catalogue import small, texts_of


def test_a_revision_has_twelve_hexadecimal_characters() -> None:
    revision = load_catalogue(texts_of(small())).revision

    assert len(revision) == 12
    assert set(revision) <= set("0123456789abcdef")


def test_the_same_content_always_has_the_same_revision() -> None:
    assert load_catalogue(texts_of(small())).revision == "9967b4feb380"


def test_comments_order_and_spelling_do_not_change_it() -> None:
    plain = small()
    plain["packs"].append(plain["packs"][0] | {"id": "beech"})
    other = small()
    other["packs"].insert(
        0, plain["packs"][1] | {"capacity_ah": "10.000", "full_v": {"value": 42, "plus_minus": 0}}
    )
    texts = texts_of(other)
    texts["hubs.yaml"] = "# All our hubs\n" + texts["hubs.yaml"].replace(
        "brakes: [disc, rim]", "brakes:\n    - disc\n    - rim"
    )

    assert load_catalogue(texts).revision == load_catalogue(texts_of(plain)).revision


def test_a_value_that_is_the_default_anyway_does_not_change_it() -> None:
    plain = small()
    plain["hubs"][0]["regenerates"] = False

    assert load_catalogue(texts_of(plain)).revision == load_catalogue(texts_of(small())).revision


def test_a_thousandth_changes_it() -> None:
    plain = small()
    plain["windings"][0]["resistance_ohm"] = 0.131

    assert load_catalogue(texts_of(plain)).revision != load_catalogue(texts_of(small())).revision


def test_a_part_more_and_a_line_about_it_change_it() -> None:
    more = small()
    more["packs"].append(more["packs"][0] | {"id": "beech"})

    revisions = {
        load_catalogue(texts).revision
        for texts in (texts_of(small()), texts_of(more), texts_of(small()) | {"about.yaml": "about: Ours"})
    }

    assert len(revisions) == 3
