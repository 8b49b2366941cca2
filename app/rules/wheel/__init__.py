"""Whether the wheel can be built and may carry the load: rim, size, tyre, mass."""

from app.rules.rule import Rule
from app.rules.wheel.load import total_load
from app.rules.wheel.rims import own_rim, rim_brake_track, spoke_holes
from app.rules.wheel.size import ready_wheel_size, wheel_size
from app.rules.wheel.tyre import tyre_on_new_rim, tyre_on_ready_wheel, tyre_on_rim

RULES: tuple[Rule, ...] = (
    wheel_size,
    ready_wheel_size,
    spoke_holes,
    own_rim,
    rim_brake_track,
    tyre_on_rim,
    tyre_on_ready_wheel,
    tyre_on_new_rim,
    total_load,
)
