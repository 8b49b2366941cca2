"""What a program reads once and keeps: the facts, the rules and the parts."""

from __future__ import annotations

from functools import cache

from fastapi import APIRouter, Request
from pydantic import TypeAdapter
from starlette.responses import Response

from app.catalogue.catalogue import Catalogue
from app.catalogue.text import load_catalogue
from app.web.api.documented import ASKED_AGAIN, kept
from app.web.api.fact_table import FactTable, fact_table
from app.web.api.revalidated import revalidated
from app.web.api.rule_book import RuleBook, rule_book
from app.web.current import CurrentSite

router = APIRouter(tags=["tables"])

FACT_TABLE = TypeAdapter(FactTable)
RULE_BOOK = TypeAdapter(RuleBook)
CATALOGUE = TypeAdapter(Catalogue)


@router.get(
    "/facts",
    operation_id="list_facts",
    summary="The table of facts",
    responses=kept("FactTable", "Every fact, in the order in which a bike is handled on the stand."),
    openapi_extra=ASKED_AGAIN,
)
async def list_facts(request: Request) -> Response:
    """Every fact that a check takes: its unit, its range, its words, how it is measured and how exactly.

    The names are the same in the JSON, in the columns of a CSV file and on the pages.
    """
    return revalidated(request, _facts())


@router.get(
    "/rules",
    operation_id="list_rules",
    summary="The rule book",
    responses=kept("RuleBook", "Every rule, in the order of the book."),
    openapi_extra=ASKED_AGAIN,
)
async def list_rules(request: Request, site: CurrentSite) -> Response:
    """Every rule: when it applies, what must hold, what it assumes, its source, and the facts that settle it.

    `rules_revision` is the one that reports name; it changes with any rule and any limit.
    """
    return revalidated(request, RULE_BOOK.dump_json(rule_book(site.checker)))


@router.get(
    "/catalogue",
    operation_id="list_parts",
    summary="The parts that kits are made of",
    responses=kept("Catalogue", "The parts by kind, each kind in the order of its ids."),
    openapi_extra=ASKED_AGAIN,
)
async def list_parts(request: Request, site: CurrentSite) -> Response:
    """The catalogue in force. A value that the maker hasn't given is null; without a catalogue all is empty.

    A dimension is a text, so that it is exact: "12.5", or value and plus_minus, or low and high.
    """
    return revalidated(request, CATALOGUE.dump_json(site.catalogue or load_catalogue({})))


@cache
def _facts() -> bytes:
    return FACT_TABLE.dump_json(fact_table())
