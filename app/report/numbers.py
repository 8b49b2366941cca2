"""Numbers as they are printed: in whole thousandths, rounded so that they never contradict a verdict."""

from __future__ import annotations

from functools import lru_cache

from app.facts.span import Span

# A thin space that doesn't break, between a number and its unit.
THIN = "\u202f"

# Places shown of a unit where nothing asks for more.
PLACES = {"mm": 1, "N·m": 1, "V": 1, "A": 1, "Ω": 2, "km/h": 1, "%": 1, "kg": 1, "m/s": 1}
NO_SPACE = {"°"}
MOST_PLACES = 3
# Up to one unit either side is an uncertainty; more is a range, unless it is within a hundredth.
NARROW = 1000

# A name's ending tells the unit of its value.
_ENDINGS = {
    "mm": "mm", "nm": "N·m", "n": "N", "kg": "kg", "w": "W", "v": "V", "a": "A", "kmh": "km/h",
    "deg": "°", "pct": "%", "ohm": "Ω", "c": "°C", "ms": "m/s", "m": "m", "km": "km",
    "mh": "mH", "mpa": "MPa",
}  # fmt: skip


def unit_of(name: str) -> str:
    """The unit that a value's name carries, as printed; nothing for a count."""
    return _ENDINGS.get(name.rpartition("_")[2], "") if "_" in name else ""


def places_needed(thousandths: int, at_least: int) -> int:
    """Places that show the number without loss, never fewer than asked."""
    for places in range(at_least, MOST_PLACES):
        if thousandths % 10 ** (MOST_PLACES - places) == 0:
            return places
    return MOST_PLACES


def shown(thousandths: int, places: int, rounding: str = "nearest") -> str:
    """The number with so many places, rounded to the nearest, `down` (towards minus infinity) or `up`."""
    step = 10 ** (MOST_PLACES - places)
    if rounding == "down":
        whole = thousandths // step
    elif rounding == "up":
        whole = -(-thousandths // step)
    else:
        whole = (
            (thousandths + step // 2) // step if thousandths >= 0 else -((-thousandths + step // 2) // step)
        )
    sign, digits = ("−" if whole < 0 else ""), abs(whole)
    if places == 0:
        return f"{sign}{digits}"
    head, tail = divmod(digits, 10**places)
    return f"{sign}{head}.{tail:0{places}d}"


def with_unit(number: str, unit: str) -> str:
    """A number and its unit, kept together."""
    if not unit:
        return number
    return f"{number}{unit}" if unit in NO_SPACE else f"{number}{THIN}{unit}"


def span_text(span: Span, unit: str, places: int | None = None) -> str:
    """A span as it is read out: one number, number ± half, or from … to."""
    return _span_text(span.low, span.high, unit, PLACES.get(unit, 0) if places is None else places)


# The same dimensions of the same parts are read out in finding after finding.
@lru_cache(maxsize=4096)
def _span_text(low: int, high: int, unit: str, least: int) -> str:
    if low == high:
        return with_unit(shown(low, places_needed(low, least)), unit)
    middle, half = (low + high) // 2, (high - low) // 2
    if (high - low) % 2 == 0 and _is_reading(middle, half, least):
        by = max(places_needed(half, least), places_needed(middle, least))
        return f"{with_unit(shown(middle, by), unit)} ± {shown(half, by)}"
    return f"{shown(low, least, 'down')} to {with_unit(shown(high, least, 'up'), unit)}"


def _is_reading(middle: int, half: int, least: int) -> bool:
    """Whether number ± half reads better than from … to: a narrow span, without loss."""
    narrow = half <= NARROW or half * 100 <= abs(middle)
    return narrow and shows_exactly(half, least + 1) and shows_exactly(middle, least + 1)


def shows_exactly(thousandths: int, places: int) -> bool:
    """Whether so many places show the number without rounding."""
    return places >= MOST_PLACES or thousandths % 10 ** (MOST_PLACES - places) == 0
