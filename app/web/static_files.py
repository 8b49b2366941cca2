"""Static files under addresses that hold their hash: read and compressed once, kept by browsers for ever."""

from __future__ import annotations

import gzip
import hashlib
import re
from collections.abc import Mapping
from dataclasses import dataclass, field
from pathlib import Path

from starlette.responses import Response

MEDIA_TYPES = {
    ".css": "text/css",
    ".js": "text/javascript",
    ".svg": "image/svg+xml",
    ".txt": "text/plain",
    ".woff2": "font/woff2",
}
COMPRESSED_ALREADY = frozenset({".woff2"})
WORTH_COMPRESSING = 500
STYLES = "axlewright.css"
FIRST_STYLES = "layers.css"
ADDRESS_IN_CSS = re.compile(r'url\("\.\./(?P<name>[^"]+)"\)')
HASH_DIGITS = 12
FOR_EVER = "public, max-age=31536000, immutable"


@dataclass(frozen=True, slots=True)
class StaticFile:
    """One file ready to be sent; `gzipped` is None where compression gains nothing."""

    address: str
    media_type: str
    body: bytes = field(repr=False)
    gzipped: bytes | None = field(repr=False)

    def response(self, accepted_encodings: str) -> Response:
        """The file, compressed where the browser takes it so."""
        headers = {"Cache-Control": FOR_EVER}
        if self.gzipped is None or "gzip" not in accepted_encodings:
            return Response(self.body, media_type=self.media_type, headers=headers)
        headers |= {"Content-Encoding": "gzip", "Vary": "Accept-Encoding"}
        return Response(self.gzipped, media_type=self.media_type, headers=headers)


@dataclass(frozen=True, slots=True)
class StaticFiles:
    """All static files, by the name that templates use and by the address that browsers ask for."""

    by_name: Mapping[str, StaticFile]
    by_address: Mapping[str, StaticFile]

    def address(self, name: str) -> str:
        """The hashed address of a file, such as "icon.svg". A file that isn't there is a KeyError."""
        return self.by_name[name].address


def read_static_files(folder: Path) -> StaticFiles:
    """Read a folder of static files, with all of css/ joined into one, and each folder under js/ into one.

    A style sheet that names a file which isn't there is a KeyError.
    """
    names = sorted(
        path.relative_to(folder).as_posix() for path in folder.rglob("*") if path.suffix in MEDIA_TYPES
    )
    files = {
        name: _prepared(name, (folder / name).read_bytes())
        for name in names
        if not name.startswith(("css/", "js/"))
    }
    files |= {name: _prepared(name, body) for name, body in _joined_scripts(folder / "js").items()}
    files[STYLES] = _prepared(STYLES, _joined_styles(folder / "css", files))
    return StaticFiles(by_name=files, by_address={file.address: file for file in files.values()})


def _prepared(name: str, body: bytes) -> StaticFile:
    stem, _, extension = name.rpartition(".")
    digest = hashlib.sha256(body).hexdigest()[:HASH_DIGITS]
    suffix = f".{extension}"
    is_worth_it = suffix not in COMPRESSED_ALREADY and len(body) >= WORTH_COMPRESSING
    # mtime=0: the same file compresses to the same bytes at every start
    gzipped = gzip.compress(body, mtime=0) if is_worth_it else None
    return StaticFile(f"/static/{stem}.{digest}{suffix}", MEDIA_TYPES[suffix], body, gzipped)


def _joined_scripts(folder: Path) -> dict[str, bytes]:
    pages = sorted(path for path in folder.glob("*") if path.is_dir())
    return {
        f"js/{page.name}.js": b"\n".join(script.read_bytes() for script in sorted(page.glob("*.js")))
        for page in pages
    }


def _joined_styles(folder: Path, files: Mapping[str, StaticFile]) -> bytes:
    # The order of the layers is declared before any of them is filled.
    sheets = sorted(folder.glob("*.css"), key=lambda sheet: (sheet.name != FIRST_STYLES, sheet.name))
    joined = "\n".join(sheet.read_text(encoding="utf-8") for sheet in sheets)
    return ADDRESS_IN_CSS.sub(lambda found: f'url("{files[found["name"]].address}")', joined).encode()
