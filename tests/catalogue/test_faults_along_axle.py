"""Lengths along the axle that can't all be true are faults, from shrinking profiles to sums that are off."""

from __future__ import annotations

from typing import Any

import pytest

from tests.catalogue.small_catalogue import changed, faults_in, small, texts_of

SHELL = {"shell_radius_mm": 110, "shell_width_mm": 50}
STEPS = [{"radius_mm": 40, "inboard_mm": -3}, {"radius_mm": 110, "inboard_mm": 0}]

CHANGES: list[Any] = [
    pytest.param("hubs", {**SHELL, "shell_profile": STEPS[::-1]}, "shell_profile", "grow", id="shrinks"),
    pytest.param(
        "hubs",
        {"shell_radius_mm": 99, "shell_profile": STEPS},
        "shell_radius_mm",
        "last step",
        id="two radii",
    ),
    pytest.param("hubs", {"cover_radius_mm": 80}, "cover_face_mm", "belong together", id="half a cover"),
    pytest.param("hubs", {**SHELL, "flange_right_mm": 51}, "flange_right_mm", "beyond", id="flange off it"),
    pytest.param(
        "hubs", {"spoke_heads_left": "up"}, "spoke_heads_left", "'out', 'in' or 'both'", id="heads nowhere"
    ),
    pytest.param(
        "axle_sets", {"left_stack": [{"what": "spacer", "mm": 0}]}, "left_stack", "above 0", id="no thickness"
    ),
    pytest.param(
        "axle_sets",
        {"shell_face_mm": 32, "left_stack": [{"what": "spacer", "mm": 30}]},
        "left_stack",
        "adds up to 30, and shell_face_mm is 32",
        id="left side ends short of the shell",
    ),
    pytest.param(
        "freehubs",
        {"largest_cog_face_mm": 40, "smallest_cog_face_mm": 5},
        "largest_cog_face_mm",
        "further out",
        id="cogs the wrong way round",
    ),
]


@pytest.mark.parametrize(("plural", "change", "field", "words"), CHANGES)
def test_a_part_that_contradicts_itself_is_a_fault(
    plural: str, change: dict[str, Any], field: str, words: str
) -> None:
    faults = faults_in(changed(plural, change))

    assert [fault for fault in faults if fault.field == field and words in fault.message]


def with_stacks(left_mm: str, right_mm: str) -> dict[str, str]:
    plain = small()
    plain["hubs"][0] |= SHELL
    plain["axle_sets"][0] |= {
        "left_stack": [{"what": "spacer", "mm": left_mm}],
        "right_stack": [{"what": "freehub", "mm": "40"}, {"what": "end cap", "mm": right_mm}],
    }
    return texts_of(plain)


def test_two_sides_and_the_shell_make_the_width_of_the_axle_set() -> None:
    assert faults_in(with_stacks("40.5", "4.5")) == ()


def test_two_sides_that_are_too_long_together_are_a_fault() -> None:
    faults = faults_in(with_stacks("40.5", "6"))

    assert [fault.field for fault in faults] == ["right_stack"]
    assert "adds up to 136.5" in faults[0].message
    assert "over_locknut_mm is 135" in faults[0].message
