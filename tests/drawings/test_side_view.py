"""The side view is to scale: a dimension is as long as its number says, and nothing leaves the paper."""

from __future__ import annotations

import re
from itertools import combinations

import pytest

from app.drawings.side_scene import SideScene
from app.drawings.side_view import side_view
from tests.drawings.read_back import ReadBack, length, numbers_in, place_of, read_back
from tests.drawings.scenes import STAY, side_scene

A_HUNDREDTH_UNIT = 0.01


def dimension(drawn: ReadBack) -> tuple[float, list[float]]:
    """The one dimension of a drawing: how long its line is in mm, and the numbers beside it."""
    (group,) = drawn.of_class("drawing__dimension")
    detail = drawn.of_class("drawing__detail")
    scale = float(detail[0].attrib["data-scale"]) if detail else drawn.scale
    inside = ReadBack(group)
    (line,) = inside.of_class("drawing__measured")
    return length(line) / scale, numbers_in("".join(each.text or "" for each in inside.words()))


@pytest.mark.parametrize("lowest", [9.0, 9.7, 12.0, 20.0, 40.0])
def test_a_gap_is_as_long_on_paper_as_its_number_says(lowest: float) -> None:
    drawn = read_back(side_view(side_scene(lowest)))

    long, numbers = dimension(drawn)

    assert long == pytest.approx(numbers[0], abs=2 * A_HUNDREDTH_UNIT)


@pytest.mark.parametrize("lowest", [7.0, 3.0, -4.0])
def test_an_overlap_is_as_long_as_its_number_says_and_hatched_both_ways(lowest: float) -> None:
    drawn = read_back(side_view(side_scene(lowest)))

    long, numbers = dimension(drawn)

    assert long == pytest.approx(-numbers[0], abs=2 * A_HUNDREDTH_UNIT)
    assert drawn.of_class("drawing__overlap")


def test_a_narrow_gap_is_shown_once_more_and_larger() -> None:
    narrow, wide = (read_back(side_view(side_scene(lowest))) for lowest in (9.0, 40.0))

    assert float(narrow.of_class("drawing__detail")[0].attrib["data-scale"]) >= 2 * narrow.scale
    assert narrow.of_class("drawing__spot")
    assert not wide.of_class("drawing__detail")


@pytest.mark.parametrize("lowest", [-4.0, 7.0, 9.0, 12.0, 40.0])
def test_all_words_are_on_the_paper_and_clear_of_each_other(lowest: float) -> None:
    drawn = read_back(side_view(side_scene(lowest)))
    width, height = drawn.size
    places = [place_of(each) for each in drawn.words()]

    assert all(left >= 0 and right <= width and base <= height for left, right, base in places)
    for one, other in combinations(places, 2):
        assert abs(one[2] - other[2]) >= 12 or one[1] <= other[0] or other[1] <= one[0]


def test_the_parts_are_named() -> None:
    drawn = read_back(side_view(side_scene()))

    assert {"caliper", "rotor", "axle", "torque arm", "clamp", "chainstay"} <= {
        each.text for each in drawn.words()
    }


def test_what_the_bike_has_not_got_is_neither_drawn_nor_named() -> None:
    drawn = read_back(side_view(SideScene(STAY)))

    assert {"caliper", "rotor", "torque arm", "clamp"}.isdisjoint(str(each.text) for each in drawn.words())
    assert {"drawing__rotor", "drawing__arm", "drawing__clamp", "drawing__dimension"}.isdisjoint(
        drawn.classes()
    )


def test_the_bar_of_the_scale_is_as_long_as_it_says() -> None:
    drawn = read_back(side_view(side_scene()))
    bar = next(each for each in drawn.of_class("drawing__bar") if "x1" in each.attrib)
    said = next(str(each.text) for each in drawn.words() if re.fullmatch(r"\d+ mm", str(each.text)))

    assert length(bar) / drawn.scale == pytest.approx(numbers_in(said)[0], abs=A_HUNDREDTH_UNIT)


def test_who_does_not_see_it_is_told_what_it_says() -> None:
    told = read_back(side_view(side_scene())).text("desc")

    assert told.startswith("Drawn to scale")
    assert told.endswith("The gap is told here.")
