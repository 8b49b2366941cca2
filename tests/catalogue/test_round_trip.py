"""Export, import, export again: nothing is lost and no byte differs."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from app.catalogue.catalogue import KINDS, Catalogue
from app.catalogue.text import dump_catalogue, load_catalogue
from app.catalogue.yaml_text import read_yaml, write_yaml
from app.facts.span import Span
from tests.catalogue.small_catalogue import small, texts_of
from tests.demo import demo_catalogue, texts_in

WORDS_OF_YAML = [
    "no",
    "~",
    "null",
    "1e3",
    "- a",
    "a: b",
    "#",
    "'",
    '"',
    "&a",
    "*a",
    "!x",
    "{",
    "[1]",
    "=",
    "|",
]
names = st.one_of(
    st.sampled_from(WORDS_OF_YAML),
    st.text(st.characters(exclude_categories=("C", "Zl", "Zp")), min_size=1, max_size=30).filter(str.strip),
)
thousandths = st.integers(0, 900_000)
spans = st.tuples(thousandths, thousandths).map(lambda ends: Span(min(ends), max(ends)))


@st.composite
def catalogues(draw: st.DrawFn) -> Catalogue:
    """Small catalogues: the parts of the small one with other names, notes and measures."""
    loaded = load_catalogue(texts_of(small()))
    kinds = {}
    for plural in KINDS:
        changed = []
        for part in loaded.parts(plural):
            new: dict[str, object] = {
                "name": draw(names).strip(),
                "note": draw(st.one_of(st.just(""), names)).strip(),
            }
            new["mass_kg"] = draw(st.one_of(st.none(), spans))
            changed.append(part.model_copy(update=new))
        kinds[plural] = tuple(changed)
    return Catalogue(**kinds, about=draw(names).strip())  # type: ignore[arg-type]


@given(catalogues())
def test_any_small_catalogue_comes_back_as_it_was_and_byte_for_byte(catalogue: Catalogue) -> None:
    texts = dump_catalogue(catalogue)

    again = load_catalogue(texts)

    assert dump_catalogue(again) == texts
    assert all(again.parts(plural) == catalogue.parts(plural) for plural in KINDS)
    assert again.about == catalogue.about


def test_the_demo_comes_back_as_it_was_and_byte_for_byte() -> None:
    texts = dump_catalogue(demo_catalogue())

    again = load_catalogue(texts)

    assert again == demo_catalogue()
    assert dump_catalogue(again) == texts


def test_an_export_lists_parts_by_id_whatever_their_order_was() -> None:
    plain = small()
    plain["packs"].insert(0, plain["packs"][0] | {"id": "zzz"})

    packs = dump_catalogue(load_catalogue(texts_of(plain)))["packs.yaml"]

    assert packs.index("id: acorn") < packs.index("id: zzz")


def test_an_export_leaves_out_what_was_not_given() -> None:
    hubs = dump_catalogue(load_catalogue(texts_of(small())))["hubs.yaml"]

    assert "null" not in hubs
    assert "mass_kg" not in hubs


def test_a_dimension_is_written_on_one_line() -> None:
    text = dump_catalogue(demo_catalogue())["axle_sets.yaml"]

    assert "  rotor_seat_mm: {value: 18.75, plus_minus: 0.13}\n" in text


def test_the_demo_files_and_their_export_say_the_same() -> None:
    exported = dump_catalogue(demo_catalogue())

    assert set(exported) == set(texts_in("catalogue"))


plain_values = st.recursive(
    names.map(str.strip),
    lambda inner: st.lists(inner, max_size=3) | st.dictionaries(names.map(str.strip), inner, max_size=3),
    max_leaves=8,
)


@given(plain_values)
def test_whatever_is_written_is_read_back_as_text(content: object) -> None:
    read, faults = read_yaml("any.yaml", write_yaml(content))

    assert faults == ()
    assert read == content
