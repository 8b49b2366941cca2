"""The elements of a drawing are well-formed, whatever words are in them, and carry no looks of their own."""

from __future__ import annotations

from xml.etree import ElementTree as ET

import pytest

from app.drawings import svg
from app.drawings.svg import Drawing, View, width_of
from tests.drawings.read_back import SVG, read_back

ODD = 'Stay <b> & "gap" >'


def drawing(*parts: str) -> Drawing:
    return Drawing("side-view", ODD, "2 < 3 & 4 > 3.", 40.0, 1.5, parts)


def test_words_with_signs_of_the_language_come_back_as_they_were() -> None:
    drawn = read_back(drawing(svg.words((1, 2), ODD)))

    assert drawn.text("title") == ODD
    assert drawn.text("desc") == "2 < 3 & 4 > 3."
    assert [each.text for each in drawn.words()] == [ODD]


def test_a_drawing_is_named_and_described_by_its_own_title_and_description() -> None:
    root = read_back(drawing()).root
    name, told = root.attrib["aria-labelledby"].split()

    assert root.attrib["role"] == "img"
    assert root.find(f"{SVG}title[@id='{name}']") is not None
    assert root.find(f"{SVG}desc[@id='{told}']") is not None


def test_a_document_of_its_own_knows_its_style_sheet() -> None:
    text = drawing().document("/static/app.0a1b.css")

    assert '<?xml-stylesheet type="text/css" href="/static/app.0a1b.css"?>' in text.splitlines()[1]
    assert ET.fromstring(text).tag == f"{SVG}svg"  # noqa: S314 - the text is our own


def test_inside_a_page_it_is_the_element_alone() -> None:
    assert drawing().inline().startswith('<svg class="drawing" viewBox="0 0 272 40"')


@pytest.mark.parametrize(
    ("value", "text"),
    [(0.0, "0"), (-0.001, "0"), (12.5, "12.5"), (3.14159, "3.14"), (-7.0, "-7"), (100.0, "100")],
)
def test_a_coordinate_is_as_short_as_it_goes(value: float, text: str) -> None:
    assert svg.number(value) == text


def test_a_path_of_steps_ends_where_its_places_say() -> None:
    places = [(0.04, 0.0), (10.06, 3.33), (7.77, 9.99)]

    assert svg.steps_text(places) == "M0 0l10.1 3.3 -2.3 6.7"


def test_a_bike_that_faces_left_has_its_cranks_to_the_left_and_its_falling_stay_below() -> None:
    view = View.from_left(2.0, (200.0, 100.0), falls_deg=10)
    (stay_x, stay_y), (up_x, up_y) = view.at((50, 0)), view.at((0, 50))

    assert (stay_x < 200, stay_y > 100) == (True, True)
    assert (up_x < 200, up_y < 100) == (True, True)
    assert view.scale == pytest.approx(2.0)


def test_a_text_that_would_leave_the_paper_is_moved_onto_it() -> None:
    text = "135.0 to 136.0 mm"

    assert svg.kept_on_paper(2.0, text) >= width_of(text) / 2
    assert svg.kept_on_paper(270.0, text) <= 272 - width_of(text) / 2
    assert svg.kept_on_paper(144.0, text) == 144.0
