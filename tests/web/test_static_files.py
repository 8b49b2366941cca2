"""Static files: found by their hash, kept for ever, compressed once, and the style sheets joined into one."""

from __future__ import annotations

import gzip
from pathlib import Path

import pytest
from fastapi import FastAPI
from fastapi.testclient import TestClient

from app.web.site import Site
from app.web.static_files import read_static_files


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    """A small folder of static files."""
    for name, text in {
        "css/layers.css": "@layer plain;",
        "css/plain.css": '@layer plain { body { src: url("../fonts/face.woff2") } }',
        "fonts/face.woff2": "not really a font",
        "fonts/LICENSE": "not served: it has no kind",
        "icon.svg": "<svg/>",
        "js/counter/hands.js": "const hands = 2;",
        "js/counter/saving.js": "save(hands);",
    }.items():
        path = tmp_path / "static" / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(text, encoding="utf-8")
    return tmp_path / "static"


def test_the_address_changes_with_the_content(folder: Path) -> None:
    before = read_static_files(folder).address("icon.svg")
    (folder / "icon.svg").write_text("<svg></svg>", encoding="utf-8")
    after = read_static_files(folder).address("icon.svg")

    assert before.startswith("/static/icon.")
    assert before.endswith(".svg")
    assert before != after


def test_style_sheets_are_joined_with_the_layers_first(folder: Path) -> None:
    files = read_static_files(folder)

    joined = files.by_name["axlewright.css"].body.decode()

    assert joined.startswith("@layer plain;\n@layer plain {")
    assert f'url("{files.address("fonts/face.woff2")}")' in joined
    assert "css/plain.css" not in files.by_name


def test_the_scripts_of_a_page_are_joined_in_the_order_of_their_names(folder: Path) -> None:
    files = read_static_files(folder)

    assert files.by_name["js/counter.js"].body == b"const hands = 2;\nsave(hands);"
    assert "js/counter/hands.js" not in files.by_name


def test_a_style_sheet_that_names_a_missing_file_is_refused(folder: Path) -> None:
    (folder / "fonts" / "face.woff2").unlink()

    with pytest.raises(KeyError, match=r"fonts/face\.woff2"):
        read_static_files(folder)


def test_the_hash_holds_for_what_a_style_sheet_names(folder: Path) -> None:
    before = read_static_files(folder).address("axlewright.css")
    (folder / "fonts" / "face.woff2").write_text("another font", encoding="utf-8")

    assert read_static_files(folder).address("axlewright.css") != before


def test_only_kinds_that_browsers_ask_for_are_served(folder: Path) -> None:
    served = set(read_static_files(folder).by_name)

    assert served == {"axlewright.css", "fonts/face.woff2", "icon.svg", "js/counter.js"}


@pytest.mark.parametrize("name", ["axlewright.css", "vendor/htmx-4.0.1.min.js"])
def test_text_is_sent_compressed_and_plain_alike(name: str, client: TestClient, app: FastAPI) -> None:
    site: Site = app.state.site
    file = site.static.by_name[name]

    compressed = client.get(file.address)
    plain = client.get(file.address, headers={"Accept-Encoding": "identity"})

    assert compressed.headers["Content-Encoding"] == "gzip"
    assert "Content-Encoding" not in plain.headers
    assert compressed.headers["Vary"] == plain.headers["Vary"] == "Accept-Encoding"
    assert compressed.content == plain.content == file.body
    assert file.gzipped
    assert gzip.decompress(file.gzipped) == file.body


def test_a_font_is_compressed_already(client: TestClient, app: FastAPI) -> None:
    site: Site = app.state.site

    response = client.get(site.static.address("fonts/atkinson-hyperlegible-mono-latin.woff2"))

    assert "Content-Encoding" not in response.headers
    assert response.content.startswith(b"wOF2")


@pytest.mark.parametrize(
    "address", ["/static/icon.svg", "/static/icon.000000000000.svg", "/static/../pyproject.toml", "/static/"]
)
def test_an_address_without_the_right_hash_isnt_there(address: str, client: TestClient) -> None:
    assert client.get(address).status_code == 404


def test_the_first_visit_is_light(client: TestClient, app: FastAPI) -> None:
    site: Site = app.state.site
    page = client.get("/", headers={"Accept-Encoding": "identity"})
    named = [file for file in site.static.by_address.values() if file.address in page.text]
    fonts = [
        file for name, file in site.static.by_name.items() if name.startswith("fonts/") and name.endswith("2")
    ]

    sizes = [len(file.gzipped or file.body) for file in {*named, *fonts}]

    assert len(sizes) + 1 <= 7
    assert sum(sizes) + len(gzip.compress(page.content)) <= 100_000
