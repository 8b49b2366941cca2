"""Times as the shop's clock shows them; the store keeps them in UTC."""

from __future__ import annotations

from datetime import datetime, tzinfo


def clock(moment: datetime, zone: tzinfo | None) -> str:
    """Hours, minutes and seconds, such as "10:42:07"; None is the machine's own zone."""
    return f"{moment.astimezone(zone):%H:%M:%S}"


def day_and_clock(moment: datetime, zone: tzinfo | None) -> str:
    """Day and minute, such as "3 May 2027, 10:42"."""
    local = moment.astimezone(zone)
    return f"{local.day} {local:%B %Y, %H:%M}"
