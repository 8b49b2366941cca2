"""A dimension of a part: a span, written in the catalogue as a number, with its ±, or as low and high."""

from __future__ import annotations

from collections.abc import Mapping
from decimal import Decimal, InvalidOperation
from typing import Annotated, TypeAlias

from pydantic import BeforeValidator, PlainSerializer, WithJsonSchema

from app.catalogue.fault import shown
from app.facts.span import Span, in_unit

LARGEST = Decimal(1_000_000)
SMALLEST = Decimal("1e-9")


def _exact(value: object, what: str) -> Decimal:
    if isinstance(value, bool) or not isinstance(value, int | str | Decimal):
        message = f"{what} must be a number, like 12 or 12.5, not {shown(value)}"
        raise ValueError(message)  # noqa: TRY004 - the validator collects ValueErrors, a TypeError would stop it
    try:
        number = Decimal(value)
    except InvalidOperation:
        message = f"{what} must be a number, like 12 or 12.5, not {shown(value)}"
        raise ValueError(message) from None
    if not number.is_finite() or number.copy_abs() > LARGEST:
        message = f"{what} must be a finite number within ±{LARGEST:,}, not {shown(value)}"
        raise ValueError(message)
    # 1e-999999999 is a short text, and a fraction of gigabytes.
    if number.quantize(SMALLEST) != number:
        message = f"{what} must have at most 9 decimal places, not {shown(value)}"
        raise ValueError(message)
    return number


def read_dimension(value: object) -> Span:
    """`12`, `{value: 12, plus_minus: 0.1}` or `{low: 11.9, high: 12.1}` as a span; else a ValueError."""
    if isinstance(value, Span):
        return value
    if not isinstance(value, Mapping):
        return Span.exactly(_exact(value, "a dimension"))
    keys = set(value)
    if keys == {"value", "plus_minus"}:
        return Span.around(_exact(value["value"], "value"), abs(_exact(value["plus_minus"], "plus_minus")))
    if keys == {"low", "high"}:
        low, high = _exact(value["low"], "low"), _exact(value["high"], "high")
        if low > high:
            message = f"low must not be above high: {low} is above {high}"
            raise ValueError(message)
        return Span.between(low, high)
    message = "a dimension is a number, or value with plus_minus, or low with high"
    raise ValueError(message)


def plain(thousandths: int) -> str:
    """A number without needless zeros: 12500 is 12.5."""
    return f"{in_unit(thousandths).normalize():f}"


def write_dimension(span: Span) -> str | dict[str, str]:
    """The one way a span is written back; reading it gives the same span."""
    if span.is_exact:
        return plain(span.low)
    if (span.low + span.high) % 2 == 0:
        return {"value": plain((span.low + span.high) // 2), "plus_minus": plain(span.width // 2)}
    return {"low": plain(span.low), "high": plain(span.high)}


Dimension: TypeAlias = Annotated[
    Span,
    BeforeValidator(read_dimension),
    PlainSerializer(write_dimension),
    WithJsonSchema(
        {"type": ["string", "object"], "description": "a number, or value and plus_minus, or low and high"}
    ),
]
