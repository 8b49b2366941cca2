"""The layers that judge a bike reach for no file, clock or network: same bike, same answer."""

import ast
import sys
from collections.abc import Iterator, Mapping
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]
LAYERS: Mapping[str, frozenset[str]] = {
    "facts": frozenset({"pydantic"}),
    "catalogue": frozenset({"pydantic", "pydantic_core", "yaml"}),
    "mechanics": frozenset({"numpy", "shapely"}),
    "rules": frozenset({"numpy"}),
    "report": frozenset({"numpy", "pydantic"}),
    "drawings": frozenset({"numpy", "shapely"}),
}
REACHING_MODULES = frozenset(
    """asyncio builtins concurrent ctypes fileinput getpass glob http importlib locale logging mmap
    multiprocessing os pathlib platform random secrets shutil signal smtplib socket socketserver sqlite3
    ssl subprocess sys tempfile threading time urllib uuid webbrowser zoneinfo""".split()
)
REACHING_NAMES = frozenset("__import__ breakpoint eval exec input open print".split())
REACHING_ATTRIBUTES = frozenset(
    """environ fromfile getenv loadtxt memmap now open random read_bytes read_text savetxt stdin stdout
    today tofile utcnow write_bytes write_text""".split()
)


def breaches(source: str, may_import: frozenset[str]) -> list[str]:
    """Say line by line what a module of a pure layer must not do."""
    found = sorted((line, what) for line, what in reaches(ast.parse(source), may_import))
    return [f"line {line}: {what}" for line, what in found]


def reaches(tree: ast.AST, may_import: frozenset[str]) -> Iterator[tuple[int, str]]:
    for node in ast.walk(tree):
        match node:
            case ast.Import(names=names):
                yield from ((node.lineno, f"import {n.name}") for n in names if bars(n.name, may_import))
            case ast.ImportFrom(module=str(module), level=0) if bars(module, may_import):
                yield node.lineno, f"import {module}"
            case ast.Name(id=name) if name in REACHING_NAMES:
                yield node.lineno, name
            case ast.Attribute(attr=name) if name in REACHING_ATTRIBUTES:
                yield node.lineno, f".{name}"


def bars(module: str, may_import: frozenset[str]) -> bool:
    """Tell whether a pure layer must leave a module alone: it reaches out, or is not on its list."""
    top = module.partition(".")[0]
    if top in sys.stdlib_module_names:
        return top in REACHING_MODULES
    return top != "app" and top not in may_import


@pytest.mark.parametrize("layer", LAYERS)
def test_a_layer_that_judges_reaches_for_nothing_outside(layer: str) -> None:
    modules = sorted((ROOT / "app" / layer).rglob("*.py"))

    impure = [
        f"{module.relative_to(ROOT)} {breach}"
        for module in modules
        for breach in breaches(module.read_text(encoding="utf-8"), LAYERS[layer])
    ]

    assert impure == []


@pytest.mark.parametrize(
    "source",
    [
        "text = open('bike.yaml')",
        "reader = open",
        "text = Path('bike.yaml').read_text()",
        "print('fits')",
        "from datetime import datetime\nnow = datetime.now()",
        "from datetime import date\nday = date.today()",
        "import time",
        "import os.path",
        "from os import environ",
        "import socket",
        "import random",
        "from urllib.request import urlopen",
        "noise = numpy.random.normal()",
        "import requests",
        "import fastapi",
        "from sqlmodel import Session",
        "import sqlalchemy.orm",
        "from jinja2 import Environment",
        "def late():\n    import httpx2",
        "from importlib.resources import files",
    ],
)
def test_a_module_that_reaches_outside_is_found(source: str) -> None:
    found = breaches(source, may_import=LAYERS["rules"])

    assert len(found) == 1


@pytest.mark.parametrize(
    "source",
    [
        "import math",
        "from app.facts.span import Span",
        "from . import axle",
        "import numpy as np",
        "from datetime import date\nread_on = date(2026, 3, 1)",
        "def reopened(span):\n    return span.opened",
    ],
)
def test_a_module_that_only_computes_is_left_alone(source: str) -> None:
    assert breaches(source, may_import=LAYERS["rules"]) == []


def test_each_layer_has_its_own_list_of_libraries() -> None:
    assert breaches("import yaml", LAYERS["catalogue"]) == []
    assert breaches("import yaml", LAYERS["facts"]) == ["line 1: import yaml"]
