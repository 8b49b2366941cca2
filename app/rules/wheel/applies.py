"""When a rule about lacing does not concern the hub: it comes as a wheel, or as a bare hub."""

from __future__ import annotations

from app.rules.check import Inapplicable

READY_LACED = Inapplicable("This hub comes laced into a rim of its own.")
BARE_HUB = Inapplicable("This is a bare hub, without a rim.")
