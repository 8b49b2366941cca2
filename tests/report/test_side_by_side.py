"""Kits beside each other say what the report says of each."""

from __future__ import annotations

from dataclasses import replace

import pytest

from app.report.side_by_side import side_by_side
from app.rules.rule import PART_KINDS
from tests.report.bikes import BIKES, bike, checker, report_on


@pytest.mark.parametrize("name", BIKES)
def test_the_first_column_is_the_best_kit_of_the_report(name: str) -> None:
    report = report_on(name)
    best = report.best
    assert best

    columns = side_by_side(checker(), bike(name), report.kits)

    assert [column.kit for column in columns] == list(report.kits)
    # The report may add to a remedy what is worth trying; side by side there is no room for remedies.
    assert [replace(each, remedy="") for each in columns[0].findings] == [
        replace(each, remedy="") for each in best.findings
    ]
    assert columns[0].parts == {kind: part.name for kind, part in best.parts.items()}
    assert tuple(columns[0].parts) == PART_KINDS


def test_a_kit_whose_part_is_gone_is_left_out() -> None:
    report = report_on("steel-touring-135-qr")
    first, second, *_ = report.kits
    gone = replace(first, key=first.key.replace("+", "+no-such-", 1))
    short = replace(first, key=first.key.rpartition("+")[0])

    columns = side_by_side(checker(), bike("steel-touring-135-qr"), [gone, short, second])

    assert [column.kit for column in columns] == [second]
