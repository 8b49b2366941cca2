"""What a test does at the counter: posts a sheet, and reads one row or one address of what comes back."""

from __future__ import annotations

import re
from collections.abc import Mapping

from fastapi import FastAPI
from fastapi.testclient import TestClient
from httpx2 import Response

from app.store import builds
from app.store.database import Store
from app.store.records import BuildRecord

AS_SCRIPT = {"Accept": "application/json"}


def row(html: str, fact: str) -> str:
    """The HTML of the row of one fact, of a page or of what comes back while somebody types."""
    found = re.search(
        rf'<[^>]*\sdata-(?:row|for)="{fact}".*?(?=<[^>]*\sdata-(?:row|for)="|</section>|</template>)',
        html,
        re.DOTALL,
    )
    assert found, f"{fact} has no row"
    return found[0]


def hidden(html: str, name: str) -> str:
    """The value that a page keeps for its form under this name."""
    found = re.search(rf'type="hidden" name="{name}" value="([^"]*)"', html)
    assert found, f"{name} is not in the form"
    return found[1].replace("&#34;", '"')


def code_of(response: Response) -> str:
    """The code of the build that an answer leads to."""
    found = re.search(
        r"/builds/([0-9A-Z-]{9})/counter", response.headers.get("location", "") or response.text
    )
    assert found
    return found[1]


def save(
    client: TestClient, fields: Mapping[str, str], address: str = "/counter", action: str = "save"
) -> Response:
    """Press "Save" on a sheet without a script."""
    return client.post(address, data={**fields, "action": action})


def kept(app: FastAPI, code: str) -> BuildRecord:
    """The build as the store has it."""
    store: Store = app.state.store
    record = builds.load(store, code)
    assert record
    return record
