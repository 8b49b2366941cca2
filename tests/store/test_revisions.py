"""A revision is what was judged and issued once, and stays that for good."""

from concurrent.futures import ThreadPoolExecutor
from datetime import timedelta
from pathlib import Path

import pytest
from sqlalchemy import text
from sqlalchemy.exc import IntegrityError

from app.store import catalogues
from app.store.builds import load, revision, revisions, save_draft, save_revision
from app.store.database import Store
from app.store.errors import UnknownBuildError
from app.store.records import revision_letter
from app.store.tables import CatalogueText, DraftAnswer, Revision
from tests.store.samples import MORNING, count, opened, reading, snapshot


@pytest.fixture
def code(store: Store) -> str:
    return save_draft(store, None, "first field", {"dropout_width_mm": reading("134.6")})


@pytest.mark.parametrize(
    ("number", "letter"),
    [(1, "A"), (2, "B"), (26, "Z"), (27, "AA"), (52, "AZ"), (53, "BA"), (702, "ZZ"), (703, "AAA")],
)
def test_revisions_are_lettered_like_drawings(number: int, letter: str) -> None:
    assert revision_letter(number) == letter


def test_a_revision_gives_back_what_it_froze(store: Store, code: str) -> None:
    frozen = snapshot(width="134.6", issued_by="Sam")

    number = save_revision(store, code, "form-1", frozen)

    record = revision(store, code, number)
    assert record is not None
    assert (record.number, record.letter, record.state) == (1, "A", "fit")
    assert record.facts == frozen.facts_json
    assert record.report == frozen.report_json
    assert record.combination_key == frozen.combination_key
    assert record.rules_revision == frozen.rules_revision
    assert record.issued_by == "Sam"
    assert record.saved_at == MORNING + timedelta(seconds=2)


def test_a_later_field_does_not_touch_the_revision(store: Store, code: str) -> None:
    save_revision(store, code, "form-1", snapshot(width="134.6"))

    save_draft(store, code, "form-2", {"dropout_width_mm": reading("138")})

    build = load(store, code)
    assert build is not None
    assert build.latest is not None
    assert build.facts == {"dropout_width_mm": reading("138")}
    assert build.latest.facts == {"dropout_width_mm": reading("134.6")}


def test_revisions_stand_in_the_order_of_their_numbers_even_if_the_clock_was_put_back(
    store: Store, code: str
) -> None:
    for days_back in range(3):
        moment = MORNING - timedelta(days=days_back)
        save_revision(store, code, f"form-{days_back}", snapshot(saved_at=moment))

    build = load(store, code)
    assert build is not None
    assert [line.letter for line in build.revisions] == ["A", "B", "C"]
    assert build.latest == revision(store, code, 3)
    assert revisions(store, code) == build.revisions


def test_each_revision_keeps_the_catalogue_that_judged_it(store: Store, code: str) -> None:
    old = snapshot(catalogue="6d0c1f27ab94")
    new = snapshot(catalogue="f00dfeed0042")

    save_revision(store, code, "form-1", old)
    save_revision(store, code, "form-2", new)
    save_revision(store, code, "form-3", old)

    lines = revisions(store, code)
    assert [line.catalogue_number for line in lines] == [1, 2, 1]
    assert [line.catalogue_revision for line in lines] == ["6d0c1f27ab94", "f00dfeed0042", "6d0c1f27ab94"]
    assert catalogues.text_by_file(store, 1) == old.catalogue_text_by_file
    assert catalogues.text_by_file(store, 2) == new.catalogue_text_by_file
    assert count(store, CatalogueText) == 2


def test_a_catalogue_gets_its_number_at_first_use_and_keeps_it(store: Store) -> None:
    assert catalogues.number(store, "6d0c1f27ab94") is None

    first = catalogues.keep(store, "6d0c1f27ab94", {"hubs.yaml": "- id: weir\n"})
    again = catalogues.keep(store, "6d0c1f27ab94", {"hubs.yaml": "- id: weir\n"})

    assert first == again == catalogues.number(store, "6d0c1f27ab94") == 1
    assert catalogues.text_by_file(store, 2) is None


def test_a_revision_of_a_build_that_nobody_saved_is_refused_and_leaves_no_trace(store: Store) -> None:
    with pytest.raises(UnknownBuildError):
        save_revision(store, "7Q4K-2M9Y", "form-1", snapshot())

    assert revision(store, "7Q4K-2M9Y", 1) is None
    assert revisions(store, "7Q4K-2M9Y") == ()
    assert count(store, CatalogueText) == 0


def test_a_revision_that_was_never_made_is_not_found(store: Store, code: str) -> None:
    save_revision(store, code, "form-1", snapshot())

    assert revision(store, code, 2) is None
    assert revision(store, code, 0) is None


@pytest.mark.parametrize(
    ("statement", "reason"),
    [
        ("UPDATE revisions SET issued_by = 'Mallory'", "a revision is never changed"),
        ("UPDATE revisions SET report = '{}' WHERE number = 1", "a revision is never changed"),
        ("DELETE FROM revisions", "a revision goes only with its build"),
        ("UPDATE catalogue_texts SET text_by_file = '{}'", "a catalogue that was kept is never changed"),
        ("DELETE FROM catalogue_texts", "a catalogue that was kept never goes"),
    ],
)
def test_the_database_itself_refuses_to_change_what_was_issued(
    store: Store, code: str, statement: str, reason: str
) -> None:
    save_revision(store, code, "form-1", snapshot())
    before = revision(store, code, 1)

    with pytest.raises(IntegrityError, match=reason), store.writing() as session:
        session.connection().execute(text(statement))

    assert revision(store, code, 1) == before


def test_a_build_that_is_deleted_takes_its_revisions_and_answers_with_it(store: Store, code: str) -> None:
    other = save_draft(store, None, "other bike", {"slot_width_mm": reading("10.1")})
    save_revision(store, code, "form-1", snapshot())
    save_revision(store, other, "form-2", snapshot())

    with store.writing() as session:
        session.connection().execute(text("DELETE FROM builds WHERE code = :code"), {"code": code})

    assert load(store, code) is None
    assert revision(store, other, 1) is not None
    assert (count(store, Revision), count(store, DraftAnswer)) == (1, 1)


def test_four_counters_on_two_machines_number_their_revisions_without_a_gap(path: Path) -> None:
    machines = [opened(path), opened(path)]
    code = save_draft(machines[0], None, "first field", {"slot_width_mm": reading("10.1")})

    with ThreadPoolExecutor(4) as counters:
        numbers = list(
            counters.map(
                lambda sale: save_revision(machines[sale % 2], code, f"form-{sale}", snapshot()), range(40)
            )
        )

    assert sorted(numbers) == list(range(1, 41))
    assert [line.number for line in revisions(machines[0], code)] == sorted(numbers)
    for machine in machines:
        machine.close()
