"""The description of the API is whole: whatever it says is so, and its examples work as they stand."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

import pytest
from fastapi.routing import iter_route_contexts
from fastapi.testclient import TestClient
from pydantic import TypeAdapter

from app.facts.table import FACTS
from app.web.api.routes import ADDRESS as API
from app.web.api.schemas import ANSWERS

JSON, PROBLEM = "application/json", "application/problem+json"
SHAPES = {shape.__name__: TypeAdapter[Any](shape) for shape in ANSWERS}


@pytest.fixture(scope="module")
def told(program: TestClient) -> dict[str, Any]:
    description: dict[str, Any] = program.get("/openapi.json").json()
    return description


def operations(told: dict[str, Any]) -> Iterator[tuple[str, str, dict[str, Any]]]:
    for path, methods in told["paths"].items():
        for method, operation in methods.items():
            yield method.upper(), path, operation


def references(node: object) -> Iterator[str]:
    if isinstance(node, dict):
        if isinstance(node.get("$ref"), str):
            yield node["$ref"]
        for each in node.values():
            yield from references(each)
    if isinstance(node, list):
        for each in node:
            yield from references(each)


def test_it_is_openapi_3_1_and_describes_every_route_of_the_api(
    told: dict[str, Any], program: TestClient
) -> None:
    served = {
        (method, str(route.path))
        for route in iter_route_contexts(program.app.routes)  # type: ignore[attr-defined]
        if str(route.path).startswith(API)
        for method in route.methods or ()
    }

    assert told["openapi"] == "3.1.0"
    assert {(method, path) for method, path, _ in operations(told)} == served
    assert served


def test_every_operation_says_what_it_does_what_it_answers_and_how_it_refuses(told: dict[str, Any]) -> None:
    for _, _, operation in operations(told):
        assert operation["summary"]
        assert len(operation["description"]) > len(operation["summary"])
        assert all(answer["description"] for answer in operation["responses"].values())
        assert PROBLEM in operation["responses"]["default"]["content"]


def test_whatever_is_pointed_at_is_there_and_nothing_else(told: dict[str, Any]) -> None:
    names = {reference.removeprefix("#/components/schemas/") for reference in references(told)}

    assert names == told["components"]["schemas"].keys()


def test_every_fact_is_described_where_it_is_sent(told: dict[str, Any]) -> None:
    schemas = told["components"]["schemas"]

    assert {*schemas["Bike"]["properties"], *schemas["Wish"]["properties"]} == set(FACTS)
    assert schemas["Bike"]["properties"]["dropout_width_mm"]["description"].startswith("In mm. ")
    assert schemas["NewBuild"]["properties"]["job"]["maxLength"] == 60


def test_every_example_of_what_is_sent_is_taken(told: dict[str, Any], program: TestClient) -> None:
    sent = [each for each in operations(told) if "requestBody" in each[2]]

    for method, path, operation in sent:
        example = operation["requestBody"]["content"][JSON]["example"]
        assert program.request(method, path, json=example).is_success
    assert len(sent) == 2


def test_every_example_of_an_answer_has_the_shape_that_is_described(told: dict[str, Any]) -> None:
    for _, _, operation in operations(told):
        success = next(answer for status, answer in operation["responses"].items() if status < "300")
        content = success["content"][JSON]
        shape = SHAPES[content["schema"]["$ref"].rpartition("/")[2]]
        assert shape.dump_python(shape.validate_python(content["example"]), mode="json") == content["example"]


def test_the_example_of_a_check_answers_the_bike_that_is_sent(
    told: dict[str, Any], program: TestClient
) -> None:
    check = told["paths"][f"{API}/checks"]["post"]
    example = check["responses"]["200"]["content"][JSON]["example"]

    answer = program.post(f"{API}/checks", json=check["requestBody"]["content"][JSON]["example"]).json()

    assert example["sentence"] == answer["sentence"]
    assert example["combinations"][0]["findings"] == answer["combinations"][0]["findings"][:3]


def test_every_refusal_shows_a_problem_as_it_is_answered(told: dict[str, Any]) -> None:
    for _, _, operation in operations(told):
        for status, answer in operation["responses"].items():
            if status >= "400" and status.isdecimal():
                example = answer["content"][PROBLEM]["example"]
                assert example["status"] == int(status)
                assert example["detail"]


def test_the_example_of_unread_facts_names_each_with_what_is_allowed(told: dict[str, Any]) -> None:
    refusals = told["paths"][f"{API}/checks"]["post"]["responses"]
    errors = refusals["422"]["content"][PROBLEM]["example"]["errors"]

    assert [error["fact"] for error in errors] == ["", "dropout_width_mm", "rear_brake"]
    assert all(error["value"] and error["message"] for error in errors)
