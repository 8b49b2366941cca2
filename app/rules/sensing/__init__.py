"""Whether the pedal sensor mounts, is understood and quick enough, and the wiring joins and reaches."""

from app.rules.rule import Rule
from app.rules.sensing.freehub import freehub_bore, sensor_mounts
from app.rules.sensing.pedalling import edges_per_crank_turn, sensor_understood
from app.rules.sensing.plugs import cable_reach, motor_plug, pack_plug, sensor_plug
from app.rules.sensing.wishes import pedal_assist, regen_needs_quadrature, throttle_assist

RULES: tuple[Rule, ...] = (
    freehub_bore,
    sensor_mounts,
    sensor_understood,
    edges_per_crank_turn,
    pedal_assist,
    throttle_assist,
    regen_needs_quadrature,
    motor_plug,
    pack_plug,
    sensor_plug,
    cable_reach,
)
