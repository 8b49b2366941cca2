"""A bike on the counter is saved fact by fact, and no answer is lost."""

from concurrent.futures import ThreadPoolExecutor
from datetime import timedelta
from pathlib import Path

import pytest
from pydantic import JsonValue

from app.store.builds import load, save_draft
from app.store.codes import normalise
from app.store.database import Store
from app.store.errors import UnknownBuildError
from app.store.records import BuildRecord, Meta
from app.store.tables import Build
from tests.store.samples import MORNING, count, opened, reading


def found(store: Store, code: str) -> BuildRecord:
    build = load(store, code)
    assert build is not None
    return build


def test_the_first_saved_field_makes_a_build_with_a_code(store: Store) -> None:
    code = save_draft(store, None, "form-1", {"dropout_width_mm": reading("134.6 ± 0.2")})

    build = found(store, code)
    assert normalise(code) == code
    assert build.facts == {"dropout_width_mm": reading("134.6 ± 0.2")}
    assert build.created_at == build.changed_at == MORNING + timedelta(seconds=1)
    assert build.revisions == ()
    assert build.latest is None


def test_a_later_field_leaves_the_others_alone(store: Store) -> None:
    code = save_draft(store, None, "form-1", {"dropout_width_mm": reading("134.6")})

    save_draft(store, code, "form-2", {"rotor_diameter_mm": reading("160")})

    build = found(store, code)
    assert build.facts == {"dropout_width_mm": reading("134.6"), "rotor_diameter_mm": reading("160")}
    assert build.fact_saved_at["dropout_width_mm"] == MORNING + timedelta(seconds=1)
    assert build.fact_saved_at["rotor_diameter_mm"] == build.changed_at == MORNING + timedelta(seconds=2)


def test_a_field_measured_again_keeps_the_later_answer(store: Store) -> None:
    code = save_draft(store, None, "form-1", {"dropout_width_mm": reading("134.6")})

    save_draft(store, code, "form-2", {"dropout_width_mm": reading("135.1")})

    assert found(store, code).facts == {"dropout_width_mm": reading("135.1")}


def test_a_cleared_field_is_gone_and_clearing_it_again_does_no_harm(store: Store) -> None:
    both = {"dropout_width_mm": reading("134.6"), "slot_width_mm": reading("10.1")}
    code = save_draft(store, None, "form-1", both)

    save_draft(store, code, "form-2", {"dropout_width_mm": None})
    save_draft(store, code, "form-3", {"dropout_width_mm": None})

    assert found(store, code).facts == {"slot_width_mm": reading("10.1")}


def test_not_known_is_an_answer_and_stays(store: Store) -> None:
    not_known: JsonValue = {"typed": "?", "words": None}

    code = save_draft(store, None, "form-1", {"frame_material": not_known})

    assert found(store, code).facts == {"frame_material": not_known}


def test_what_was_typed_comes_back_letter_for_letter(store: Store) -> None:
    typed = "\N{FULLWIDTH DIGIT ONE}34,6 ± 0.2\N{THIN SPACE}mm \N{BICYCLE} \ud800 \x00 'quoted' \"twice\""

    code = save_draft(store, None, "form-1", {"dropout_width_mm": {"typed": typed}})

    assert found(store, code).facts == {"dropout_width_mm": {"typed": typed}}


def test_the_job_number_stays_until_another_is_written(store: Store) -> None:
    code = save_draft(store, None, "form-1", {}, Meta(job="Job 118"))

    save_draft(store, code, "form-2", {"slot_width_mm": reading("10.1")})
    assert found(store, code).job == "Job 118"

    save_draft(store, code, "form-3", {}, Meta(job="Job 119"))
    assert found(store, code).job == "Job 119"


def test_two_tabs_that_save_different_facts_at_once_are_both_kept(store: Store) -> None:
    facts = [f"fact_{number}_mm" for number in range(40)]
    code = save_draft(store, None, "form", {})

    with ThreadPoolExecutor(8) as tabs:
        list(tabs.map(lambda fact: save_draft(store, code, f"form-{fact}", {fact: reading(fact)}), facts))

    assert found(store, code).facts == {fact: reading(fact) for fact in facts}


def test_a_code_that_nobody_issued_is_refused_and_nothing_is_saved(store: Store) -> None:
    with pytest.raises(UnknownBuildError, match="We have no check with the code 7Q4K-2M9Y"):
        save_draft(store, "7Q4K-2M9Y", "form-1", {"slot_width_mm": reading("10.1")})

    assert load(store, "7Q4K-2M9Y") is None
    assert count(store, Build) == 0


def test_builds_do_not_mix(store: Store) -> None:
    first = save_draft(store, None, "form-1", {"slot_width_mm": reading("10.1")})
    second = save_draft(store, None, "form-2", {"slot_width_mm": reading("10.4")})

    assert first != second
    assert found(store, first).facts == {"slot_width_mm": reading("10.1")}
    assert found(store, second).facts == {"slot_width_mm": reading("10.4")}


def test_a_build_is_there_after_the_shop_closed_and_opened_again(path: Path) -> None:
    evening = opened(path)
    code = save_draft(evening, None, "form-1", {"slot_width_mm": reading("10.1")})
    evening.close()

    morning = opened(path)

    assert found(morning, code).facts == {"slot_width_mm": reading("10.1")}
    morning.close()
