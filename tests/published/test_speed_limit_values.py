"""Speeds of the law in km/h, as their texts are usually quoted; each source stands beside its number."""

from __future__ import annotations

import pytest

from app.facts.span import Span
from tests.demo import demo_standards

A_HUNDREDTH = "0.01"


@pytest.mark.parametrize(
    ("region", "kmh", "source"),
    [
        ("gb", "24.94", "15.5 mph: SI 2015/24 reg. 2, legislation.gov.uk/uksi/2015/24/regulation/2/made"),
        ("us_federal", "32.19", "20 mph: 16 CFR 1512.2"),
        ("us_class_3", "45.06", "28 mph: 36 CFR 1.4"),
    ],
)
def test_a_limit_in_miles_is_converted(region: str, kmh: str, source: str) -> None:
    limit = demo_standards().region(region).speed_kmh

    assert limit is not None
    assert Span.around(kmh, A_HUNDREDTH).holds(limit), source
