"""Small parts of pages: the ruler, the underlined letter, and the margins of a printed sheet."""

from __future__ import annotations

import pytest

from app.web.keyed_words import with_key
from app.web.ruler import Ruler
from app.web.sheet_margins import sheet_margins


@pytest.mark.parametrize(
    ("settled", "total", "words"),
    [(6, 14, "6 of 14 checks settled"), (0, 1, "0 of 1 check settled"), (0, 0, "0 of 0 checks settled")],
)
def test_the_ruler_says_how_much_is_settled(settled: int, total: int, words: str) -> None:
    assert Ruler(settled, total).words == words


def test_the_ruler_has_one_tick_a_check_long_where_it_is_settled() -> None:
    ruler = Ruler(2, 5)

    assert ruler.view_box == "0 0 50 24"
    assert ruler.settled_ticks == "M5 0v20M15 0v20"
    assert ruler.open_ticks == "M25 0v9M35 0v9M45 0v9"


@pytest.mark.parametrize(
    ("label", "key", "shown"),
    [
        ("disc", "d", '<kbd class="choice__key">d</kbd>isc'),
        ("Center Lock", "l", 'Center <kbd class="choice__key">L</kbd>ock'),
        ("none", "x", 'none <kbd class="choice__key">x</kbd>'),
        ("plain", "", "plain"),
        ("<b>", "b", '&lt;<kbd class="choice__key">b</kbd>&gt;'),
    ],
)
def test_the_letter_that_chooses_a_word_is_marked(label: str, key: str, shown: str) -> None:
    assert with_key(label, key) == shown


def test_the_margins_of_a_sheet_repeat_code_and_state() -> None:
    response = sheet_margins(head="SUPERSEDED BY REVISION C", foot="7Q4K-2M9Y, revision B")

    assert response.media_type == "text/css"
    assert bytes(response.body) == (
        b'@media print {\n  @page {\n    @top-center { content: "SUPERSEDED BY REVISION C"; }\n'
        b'    @bottom-left { content: "7Q4K-2M9Y, revision B"; font-size: 8pt; }\n'
        b"    @bottom-right { font-size: 8pt; }\n  }\n"
        b"  @page :first { @top-center { content: none; } }\n}\n"
    )


def test_no_text_can_leave_its_margin() -> None:
    body = bytes(sheet_margins(head='"; } body { display: none', foot="a·b\n").body).decode()

    assert r'content: "\22 \3b  \7d  body \7b  display\3a  none";' in body
    assert r'content: "a\b7 b\a ";' in body
