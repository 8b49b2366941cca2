"""The commands: serve the application, check a list of bikes, look after the catalogue."""

from __future__ import annotations

import argparse
import sys
from collections.abc import Sequence
from pathlib import Path

from app.cli.catalogue_lint import lint
from app.cli.check import check
from app.cli.serve import serve

PORTS = 65_535


def main(arguments: Sequence[str]) -> int:
    """Run one command; its exit code is 0 unless it says in one line why it failed."""
    asked = _parser().parse_args(list(arguments))
    code: int = asked.run(asked)
    return code


def _port(text: str) -> int:
    if not text.isdecimal() or not int(text) <= PORTS:
        raise argparse.ArgumentTypeError(f"a port is a whole number from 0 to {PORTS}, not {text!r}")
    return int(text)


def _parser() -> argparse.ArgumentParser:
    parser = argparse.ArgumentParser(prog="python3 -m app", description="Does the kit fit the bike?")
    commands = parser.add_subparsers(required=True, metavar="COMMAND")
    _add_serve(commands)
    _add_check(commands)
    _add_catalogue(commands)
    # Handled before this parser is reached; listed so that the help is whole.
    commands.add_parser("test", help="run all tests")
    return parser


def _add_serve(commands: argparse._SubParsersAction[argparse.ArgumentParser]) -> None:
    command = commands.add_parser("serve", help="serve the application on this machine")
    command.add_argument("--port", type=_port, help="port to listen on; 0 takes a free one (8000)")
    command.add_argument("--data", type=Path, metavar="FOLDER", help="where the database is kept (var)")
    command.set_defaults(run=lambda asked: serve(asked.port, asked.data))


def _add_check(commands: argparse._SubParsersAction[argparse.ArgumentParser]) -> None:
    command = commands.add_parser("check", help="check every bike of a file or of a folder of files")
    command.add_argument(
        "paths", nargs="+", type=Path, metavar="FILE", help="CSV or JSON, or a folder of them"
    )
    command.add_argument("--report", type=Path, metavar="FILE", help="write every report here, as JSON")
    command.set_defaults(run=lambda asked: check(asked.paths, asked.report, sys.stdout))


def _add_catalogue(commands: argparse._SubParsersAction[argparse.ArgumentParser]) -> None:
    catalogue = commands.add_parser("catalogue", help="look after the catalogue")
    actions = catalogue.add_subparsers(required=True, metavar="ACTION")
    command = actions.add_parser("lint", help="find every fault of a catalogue")
    command.add_argument("folder", nargs="?", type=Path, help="folder of YAML files (the shop's own)")
    command.set_defaults(run=lambda asked: lint(asked.folder))
