"""A process that is killed while it saves loses nothing that it acknowledged, and does nothing twice."""

import os
import random
import sqlite3
import subprocess
import sys
import time
from collections import Counter
from contextlib import closing
from pathlib import Path

from app.store.builds import load, save_draft, save_revision
from app.store.database import Store
from app.store.tables import Build, Revision
from tests.store.samples import count, opened, reading, snapshot

ROOT = Path(__file__).parents[2]
COUNTERS = 2
LONGEST_SALE_S = 0.15


def started(path: Path, name: str) -> subprocess.Popen[str]:
    return subprocess.Popen(
        [sys.executable, "-m", "tests.store.selling", str(path), name],
        cwd=ROOT,
        env={**os.environ, "PYTHONPATH": str(ROOT)},
        stdout=subprocess.PIPE,
        text=True,
    )


def acknowledged_before_the_kill(path: Path, names: list[str]) -> list[str]:
    """What the counters said they had saved, until all of them were killed at some moment."""
    counters = [started(path, name) for name in names]
    try:
        heard = [counter.stdout.readline() for counter in counters if counter.stdout]
        time.sleep(random.uniform(0, LONGEST_SALE_S))  # noqa: S311 - any moment will do
    finally:
        for counter in counters:
            counter.kill()
    for counter in counters:
        said, _ = counter.communicate()
        heard += said.splitlines()
    return heard


def is_sound(path: Path) -> bool:
    with closing(sqlite3.connect(path)) as connection:
        integrity = connection.execute("PRAGMA integrity_check").fetchall()
        return integrity == [("ok",)] and not connection.execute("PRAGMA foreign_key_check").fetchall()


def builds_by_form(path: Path) -> Counter[str]:
    with closing(sqlite3.connect(path)) as connection:
        return Counter(
            typed
            for (typed,) in connection.execute("SELECT json_extract(answer, '$.typed') FROM draft_answers")
        )


def assert_saved_once(store: Store, line: str) -> None:
    """The build or revision is there, and the same form again gives the same answer and no other build."""
    form_id, act, answer = line.split()
    if act == "draft":
        build = load(store, answer)
        assert build is not None
        assert build.facts == {"dropout_width_mm": reading(form_id)}
        assert save_draft(store, None, form_id, {"dropout_width_mm": reading(form_id)}) == answer
        return
    code = save_draft(store, None, form_id, {"dropout_width_mm": reading(form_id)})
    build = load(store, code)
    assert build is not None
    assert [str(line.number) for line in build.revisions] == [answer]
    assert save_revision(store, code, form_id, snapshot()) == int(answer)


def test_whatever_was_acknowledged_before_a_kill_is_there_exactly_once(path: Path, *, long_run: bool) -> None:
    kills = 100 if long_run else 3
    store = opened(path)
    acknowledged: list[str] = []

    for kill in range(kills):
        names = [f"kill-{kill}-counter-{number}" for number in range(COUNTERS)]
        acknowledged += acknowledged_before_the_kill(path, names)
        assert is_sound(path)

    saved = builds_by_form(path)
    for line in acknowledged:
        assert_saved_once(store, line)
    drafts = [line for line in acknowledged if " draft " in line]
    in_flight = kills * COUNTERS
    assert len(drafts) >= kills * COUNTERS
    assert set(saved.values()) == {1}
    assert len(drafts) <= count(store, Build) == len(saved) <= len(drafts) + in_flight
    assert count(store, Revision) <= len(acknowledged) - len(drafts) + in_flight
    assert is_sound(path)
    store.close()
