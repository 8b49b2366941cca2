"""Whatever bytes or JSON a program sends, it gets an answer that it can read, and never a crash."""

from __future__ import annotations

import json
from typing import Any, TypeAlias, Union

from fastapi.testclient import TestClient
from hypothesis import given
from hypothesis import strategies as st

from app.facts.json_reader import SECTIONS
from app.facts.table import FACTS

Json: TypeAlias = Union[bool, int, float, str, list["Json"], dict[str, "Json"], None]  # noqa: UP007 - recursive

HEADERS = {"Content-Type": "application/json"}
ADDRESSES = st.sampled_from(("/api/v1/checks", "/api/v1/builds"))
NAMES = st.sampled_from((*FACTS, *SECTIONS, "job", "issued_by", "value", "plus_minus", "low", "high", "tool"))
VALUES: st.SearchStrategy[Json] = st.recursive(
    st.none() | st.booleans() | st.integers() | st.floats() | st.text(max_size=20),
    lambda inner: (
        st.lists(inner, max_size=4) | st.dictionaries(NAMES | st.text(max_size=9), inner, max_size=4)
    ),
    max_leaves=8,
)
BODIES = st.fixed_dictionaries(
    {}, optional={section: st.dictionaries(NAMES, VALUES, max_size=5) for section in SECTIONS}
)


@given(address=ADDRESSES, body=st.binary(max_size=200))
def test_no_bytes_crash_it(address: str, body: bytes, program: TestClient) -> None:
    response = program.post(address, content=body, headers=HEADERS)

    assert response.status_code in {200, 201, 400, 422}
    assert response.json()


@given(address=ADDRESSES, body=VALUES | BODIES)
def test_no_json_crashes_it(address: str, body: Any, program: TestClient) -> None:  # noqa: ANN401 - any JSON
    response = program.post(address, content=json.dumps(body), headers=HEADERS)

    assert response.status_code in {200, 201, 400, 422}
    assert response.json()
    if response.status_code == 422:
        assert all(error["message"] for error in response.json()["errors"])


@given(code=st.text(min_size=1, max_size=12))
def test_no_code_crashes_it(code: str, program: TestClient) -> None:
    response = program.get(
        "/api/v1/builds/" + "".join(f"%{byte:02x}" for byte in code.encode(errors="replace"))
    )

    assert response.status_code == 404
    assert response.json()["detail"]
