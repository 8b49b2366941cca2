"""The axle section is to scale: its dimensions are as long as their numbers say."""

from __future__ import annotations

import pytest

from app.drawings.axle_section import axle_section
from tests.drawings.read_back import ReadBack, length, numbers_in, place_of, places_of, read_back
from tests.drawings.scenes import axle_scene


@pytest.fixture(scope="module")
def drawn() -> ReadBack:
    """The section of a made-up hub."""
    return read_back(axle_section(axle_scene()))


def test_every_length_is_drawn_as_long_as_its_number_says(drawn: ReadBack) -> None:
    groups = [ReadBack(each) for each in drawn.of_class("drawing__dimension")]

    assert len(groups) == 2
    for group in groups:
        (line,) = group.of_class("drawing__measured")
        first = numbers_in(str(group.words()[0].text))[0]
        assert length(line) / drawn.scale == pytest.approx(first, abs=0.02)


def test_the_parts_are_named_once_and_the_shell_inside_itself(drawn: ReadBack) -> None:
    named = [str(each.text) for each in drawn.words()]
    shell = next(each for each in drawn.words() if each.text == "motor shell")
    (outline,) = drawn.of_class("drawing__shell")
    sides = [x for x, _ in places_of(outline)]

    assert {name: named.count(name) for name in ("arm", "rotor", "motor shell", "dropout")} == {
        "arm": 1, "rotor": 1, "motor shell": 1, "dropout": 1,
    }  # fmt: skip
    assert min(sides) < float(shell.attrib["x"]) < max(sides)


def test_all_words_are_on_the_paper(drawn: ReadBack) -> None:
    width, height = drawn.size

    for each in drawn.words():
        left, right, base = place_of(each)
        assert left >= 0, each.text
        assert right <= width, each.text
        assert base <= height, each.text


def test_cut_metal_is_hatched(drawn: ReadBack) -> None:
    assert len(drawn.of_class("drawing__hatch")) >= 5


def test_who_does_not_see_it_is_told_its_numbers(drawn: ReadBack) -> None:
    assert 135.0 in numbers_in(drawn.text("desc"))
