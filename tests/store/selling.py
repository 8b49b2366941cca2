"""A counter that saves builds without end and says each answer aloud once it has it; made to be killed.

Started with the path of the database and a name that no other counter has.
"""

import itertools
import os
import sys

from app.store.builds import save_draft, save_revision
from app.store.database import Store
from tests.store.samples import reading, snapshot


def say(*words: object) -> None:
    """One line in one piece: the counter may be killed before it, or after it."""
    os.write(sys.stdout.fileno(), (" ".join(map(str, words)) + "\n").encode())


def sell(store: Store, name: str) -> None:
    for number in itertools.count():
        form_id = f"{name}-{number}"
        code = save_draft(store, None, form_id, {"dropout_width_mm": reading(form_id)})
        say(form_id, "draft", code)
        say(form_id, "revision", save_revision(store, code, form_id, snapshot(width=form_id)))


if __name__ == "__main__":
    sell(Store(f"sqlite:///{sys.argv[1]}"), sys.argv[2])
