"""Whether the axle goes into the rear end, and whether the frame may carry it."""

from app.rules.axle.axle_ends import nut_thread, nut_thread_holds, quick_release_axle_end
from app.rules.axle.beside_stay import shell_beside_bosses, shell_beside_stay
from app.rules.axle.dropouts import closed_dropouts, dropout_face, hanger, open_dropouts
from app.rules.axle.rear_suspension import one_rigid_member
from app.rules.axle.slots import slot_direction, slot_play, slot_width
from app.rules.axle.thru_axle import thru_axle_diameter, thru_axle_engagement, thru_axle_thread
from app.rules.axle.thru_axle_head import thru_axle_head, thru_axle_thread_side
from app.rules.axle.torque import carbon_torque_path, frame_carries_torque, two_arms_on_aluminium
from app.rules.axle.width import dropout_width, quick_release_closing, rear_end_spread, tight_closed_dropout
from app.rules.rule import Rule

RULES: tuple[Rule, ...] = (
    open_dropouts,
    closed_dropouts,
    dropout_width,
    rear_end_spread,
    quick_release_closing,
    tight_closed_dropout,
    slot_width,
    slot_play,
    slot_direction,
    dropout_face,
    hanger,
    nut_thread_holds,
    nut_thread,
    quick_release_axle_end,
    thru_axle_diameter,
    thru_axle_thread,
    thru_axle_engagement,
    thru_axle_head,
    thru_axle_thread_side,
    frame_carries_torque,
    carbon_torque_path,
    two_arms_on_aluminium,
    one_rigid_member,
    shell_beside_stay,
    shell_beside_bosses,
)
