"""Demo bikes saved in a shop that is served, as a program of the shop would save them."""

from __future__ import annotations

import json
from urllib.request import Request, urlopen

from tests.report.bikes import BIKES


def save_demo_bike(shop: str, name: str) -> str:
    """Save a demo bike as revision A of a new build; its code."""
    bike = json.loads(BIKES[name].read_text("utf-8"))
    body = json.dumps({"bike": bike["bike"], "wish": bike.get("wish", {}), "issued_by": "Sam"}).encode()
    request = Request(f"{shop}/api/v1/builds", body, {"Content-Type": "application/json"})  # noqa: S310 - our own shop
    with urlopen(request) as answer:  # noqa: S310 - the same
        code: str = json.load(answer)["code"]
    return code
