"""The command that serves the application: it says where, stops when told to, and says why it can't start."""

from __future__ import annotations

import os
import signal
import socket
import sqlite3
import subprocess
import sys
from collections.abc import Iterator
from contextlib import closing
from pathlib import Path
from urllib.request import urlopen

import pytest

from tests.cli.conftest import Command

SERVE = "import sys; from app.cli import main; sys.exit(main(sys.argv[1:]))"
ROOT = Path(__file__).parents[2]
SOON_S = 30


@pytest.fixture
def server(tmp_path: Path) -> Iterator[subprocess.Popen[str]]:
    """The application in a process of its own, on a free port."""
    words = [sys.executable, "-c", SERVE, "serve", "--port", "0", "--data", str(tmp_path / "shop")]
    surroundings = {name: value for name, value in os.environ.items() if not name.startswith("AXLEWRIGHT_")}
    with subprocess.Popen(
        words, cwd=ROOT, env=surroundings, stdout=subprocess.PIPE, stderr=subprocess.PIPE, text=True
    ) as server:
        yield server
        server.kill()


@pytest.mark.parametrize(
    ("told", "code"),
    [
        pytest.param(signal.SIGTERM, -signal.SIGTERM, id="by the machine"),
        pytest.param(signal.SIGINT, 0, id="with Ctrl+C"),
    ],
)
def test_it_says_where_it_is_answers_there_and_stops_when_told(
    told: signal.Signals, code: int, server: subprocess.Popen[str], tmp_path: Path
) -> None:
    assert server.stdout
    sentence = server.stdout.readline()
    address = sentence.split()[3]
    with urlopen(f"{address}api/v1/catalogue", timeout=SOON_S) as answer:  # noqa: S310 - our own server
        status = answer.status

    server.send_signal(told)
    _, errors = server.communicate(timeout=SOON_S)

    assert sentence == f"Axlewright is at {address} (Ctrl+C stops it)\n"
    assert status == 200
    assert (server.returncode, errors) == (code, "")
    assert (tmp_path / "shop" / "axlewright.sqlite").exists()


def test_a_port_that_is_taken_is_told(command: Command) -> None:
    with socket.create_server(("127.0.0.1", 0)) as taken:
        port = taken.getsockname()[1]

        said = command("serve", "--port", port)

    assert (said.code, said.out) == (1, "")
    assert said.err.startswith(f"Not started: 127.0.0.1:{port}: Address already in use")
    assert said.err.count("\n") == 1


@pytest.mark.parametrize("port", ["70000", "-1", "eighty"])
def test_a_port_that_is_none_is_told(port: str, command: Command, capsys: pytest.CaptureFixture[str]) -> None:
    with pytest.raises(SystemExit) as ended:
        command("serve", f"--port={port}")

    assert ended.value.code == 2
    assert f"a port is a whole number from 0 to 65535, not '{port}'" in capsys.readouterr().err


def test_a_catalogue_with_faults_is_told_by_the_first_of_them(
    command: Command, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    (tmp_path / "hubs.yaml").write_text("{}", encoding="utf-8")
    (tmp_path / "moons.yaml").write_text("[]", encoding="utf-8")
    monkeypatch.setenv("AXLEWRIGHT_CATALOGUE_FOLDER", str(tmp_path))

    said = command("serve", "--port", 0)

    assert (said.code, said.out) == (1, "")
    assert said.err == (
        "Not started: hubs.yaml: must be a list of parts, or [] for none, not {} "
        "That is one of 2 faults; python3 -m app catalogue lint shows all.\n"
    )


def test_a_table_of_standards_with_a_fault_is_told(
    command: Command, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    (tmp_path / "limits.yaml").write_bytes(b"\xff")
    monkeypatch.setenv("AXLEWRIGHT_STANDARDS_FOLDER", str(tmp_path))

    said = command("serve", "--port", 0)

    assert said.code == 1
    assert said.err == "Not started: limits.yaml: is no text in UTF-8: byte 1 can't be read\n"


def test_a_database_of_another_program_is_left_alone(
    command: Command, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    with closing(sqlite3.connect(tmp_path / "other.sqlite")) as other:
        other.execute("CREATE TABLE songs (title TEXT)")
    before = (tmp_path / "other.sqlite").read_bytes()
    monkeypatch.setenv("AXLEWRIGHT_DATABASE_URL", f"sqlite:///{tmp_path / 'other.sqlite'}")

    said = command("serve", "--port", 0)

    assert said.code == 1
    assert said.err == (
        "Not started: This database belongs to another program. Choose another file for the database.\n"
    )
    with closing(sqlite3.connect(tmp_path / "other.sqlite")) as other:
        assert other.execute("SELECT name FROM sqlite_master").fetchall() == [("songs",)]
    assert len((tmp_path / "other.sqlite").read_bytes()) == len(before)


@pytest.mark.parametrize(
    ("address", "why"),
    [
        ("sqlite:///{file}", "This file is no database of ours: choose another file for the database."),
        ("sqlite:///{file}/builds.sqlite", "The folder {file} for the database can't be made: File exists."),
        ("postgresql://shop/builds", "Builds are kept in SQLite, not in postgresql: use sqlite:///FILE."),
        ("builds", "'builds' is no address of a database: use sqlite:///FILE."),
    ],
)
def test_a_database_that_cant_be_used_is_told_in_one_line(
    address: str, why: str, command: Command, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    file = tmp_path / "notes.txt"
    file.write_text("no database", encoding="utf-8")
    monkeypatch.setenv("AXLEWRIGHT_DATABASE_URL", address.format(file=file))

    said = command("serve", "--port", 0)

    assert (said.code, said.out) == (1, "")
    assert said.err == f"Not started: {why.format(file=file)}\n"


def test_a_data_folder_that_is_a_file_is_told(command: Command, tmp_path: Path) -> None:
    (tmp_path / "shop").touch()

    said = command("serve", "--port", 0, "--data", tmp_path / "shop")

    assert (said.code, said.err) == (1, f"Not started: {tmp_path / 'shop'}: File exists\n")


def test_a_command_that_is_none_shows_those_there_are(
    command: Command, capsys: pytest.CaptureFixture[str]
) -> None:
    with pytest.raises(SystemExit) as ended:
        command("paint")

    assert ended.value.code == 2
    assert "serve" in capsys.readouterr().err
