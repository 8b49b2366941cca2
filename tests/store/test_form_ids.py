"""A form that is sent twice, by a second press or a broken line, is done once."""

from concurrent.futures import ThreadPoolExecutor
from pathlib import Path
from threading import Barrier

import pytest

from app.store.builds import load, revisions, save_draft, save_revision
from app.store.database import Store
from app.store.errors import FormReusedError, UnknownBuildError
from app.store.tables import Build, FormAnswer
from tests.store.samples import count, opened, reading, snapshot

WIDTH = {"dropout_width_mm": reading("134.6")}


def test_a_new_build_sent_twice_is_one_build_with_one_code(store: Store) -> None:
    first = save_draft(store, None, "form-1", WIDTH)
    again = save_draft(store, None, "form-1", WIDTH)

    assert first == again
    assert count(store, Build) == 1


def test_a_repeat_that_comes_late_does_not_bring_an_old_answer_back(store: Store) -> None:
    code = save_draft(store, None, "form-1", {})
    save_draft(store, code, "form-2", WIDTH)
    save_draft(store, code, "form-3", {"dropout_width_mm": reading("138")})

    save_draft(store, code, "form-2", WIDTH)

    build = load(store, code)
    assert build is not None
    assert build.facts == {"dropout_width_mm": reading("138")}


def test_a_revision_sent_twice_is_one_revision_whatever_was_judged_the_second_time(store: Store) -> None:
    code = save_draft(store, None, "form-1", WIDTH)

    first = save_revision(store, code, "form-2", snapshot())
    again = save_revision(store, code, "form-2", snapshot(catalogue="f00dfeed0042"))

    assert first == again == 1
    assert [line.catalogue_revision for line in revisions(store, code)] == ["6d0c1f27ab94"]


def test_one_form_may_save_its_fields_and_freeze_a_revision(store: Store) -> None:
    code = save_draft(store, None, "form-1", WIDTH)

    number = save_revision(store, code, "form-1", snapshot())

    assert number == 1


def test_other_answers_under_a_used_id_are_refused_instead_of_forgotten(store: Store) -> None:
    code = save_draft(store, None, "form-1", WIDTH)

    with pytest.raises(FormReusedError, match="already sent with other answers"):
        save_draft(store, None, "form-1", {"dropout_width_mm": reading("138")})

    build = load(store, code)
    assert build is not None
    assert build.facts == WIDTH


def test_the_id_of_one_build_does_not_freeze_another(store: Store) -> None:
    code = save_draft(store, None, "form-1", WIDTH)
    other = save_draft(store, None, "form-2", WIDTH)
    save_revision(store, code, "form-3", snapshot())

    with pytest.raises(FormReusedError):
        save_revision(store, other, "form-3", snapshot())

    assert revisions(store, other) == ()


def test_two_first_fields_of_one_sheet_land_in_one_build(store: Store) -> None:
    """A quick hand leaves two fields before the first answer has told the sheet its code."""

    def leave(fact: str) -> None:
        code = save_draft(store, None, "sheet-1", {})
        save_draft(store, code, f"sheet-1-{fact}", {fact: reading(fact)})

    with ThreadPoolExecutor(2) as fields:
        list(fields.map(leave, ["dropout_width_mm", "slot_width_mm"]))

    build = load(store, save_draft(store, None, "sheet-1", {}))
    assert build is not None
    assert set(build.facts) == {"dropout_width_mm", "slot_width_mm"}
    assert count(store, Build) == 1


def test_a_form_that_failed_may_be_sent_again(store: Store) -> None:
    with pytest.raises(UnknownBuildError):
        save_draft(store, "7Q4K-2M9Y", "form-1", WIDTH)

    code = save_draft(store, None, "form-1", WIDTH)

    assert load(store, code) is not None
    assert count(store, FormAnswer) == 1


def test_a_form_without_an_id_is_a_mistake_of_the_program(store: Store) -> None:
    with pytest.raises(ValueError, match="without an id"):
        save_draft(store, None, "", WIDTH)


def test_two_presses_at_the_same_moment_on_two_processes_give_one_answer(path: Path) -> None:
    presses = 2
    processes = [opened(path) for _ in range(presses)]

    for number in range(20):
        together = Barrier(presses)

        def press(process: Store, form_id: str = f"form-{number}", together: Barrier = together) -> str:
            together.wait()
            return save_draft(process, None, form_id, WIDTH)

        with ThreadPoolExecutor(presses) as hands:
            answers = set(hands.map(press, processes))

        assert len(answers) == 1

    assert count(processes[0], Build) == 20
    for process in processes:
        process.close()


def test_two_presses_at_the_same_moment_in_one_process_give_one_answer(store: Store) -> None:
    code = save_draft(store, None, "form", WIDTH)

    with ThreadPoolExecutor(4) as hands:
        answers = list(
            hands.map(lambda press: save_revision(store, code, f"form-{press // 4}", snapshot()), range(40))
        )

    assert len(set(answers)) == 10
    assert [line.number for line in revisions(store, code)] == list(range(1, 11))
