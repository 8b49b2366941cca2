"""What stands on a paper gauge in words: how it is printed, held and answered from."""

from __future__ import annotations

PRINT = (
    "Print at 100 %. Measure the bar. If it is off by 0.3 mm or more, print again, "
    "and don't fit the sheet to the page."
)
CUT_ARM = "Cut out the hole of the axle, and cut along the dashed line."
HOLD_ARM = (
    "Wheel out, print to the left. Hold the paper where the arm will lie: {from_mm} to {to_mm} mm inboard of "
    "the left dropout's inner face, below 0 outboard. The hole goes round the middle of the axle."
)
TURN_BETWEEN = "Turn it until the middle of the left chainstay runs between the two long fine lines."
TURN_ONTO = "Turn it until the middle of the left chainstay runs along a long fine line."
ARM_CLEARS = "Arm gauge: if the paper lies flat and meets nothing of the caliper, choose Clears."
ARM_TOUCHES = (
    "If it meets the caliper, cut along the full line too and hold it there again. If it meets the caliper "
    "at every angle even so, choose Touches. In all other cases choose Can't see."
)
ANSWER_CLAMP = (
    "Clamp gauge: held at the same angle, look along the stay between both marks of the reach. "
    "A stretch as long as the clamp, free all around: choose Reaches. "
    "Nowhere free for so long: choose Touches. Else choose Can't see."
)
BOLTED = "This arm is bolted to the brake mount: the bolt goes between both marks of the reach."
JOIN = "Join the sheets: lay line {letter} on line {letter}, diamond on diamond, and glue."

NO_SHELL = "The maker hasn't given the shell's size and place for this axle set, so it is not drawn."
CUT_SHELL = "Cut the quarter and the strip along their dashed lines. Fold the strip's tab along the dots."
HOLD_SHELL = (
    "Wheel out, print to the left. The cross goes on the middle of the axle, the straight edge along the "
    "left chainstay. Look straight along the axle."
)
HOLD_STRIP = (
    "The tab lies on the left dropout's inner face, and the strip points inboard. In a closed dropout cut "
    "the tab off and stand the strip on the floor of the socket."
)
SHELL_CLEARS = (
    "Shell gauge: if the caliper's inner half lies wholly outside the quarter, or ends before the dashed "
    "mark of the strip, choose Clears."
)
SHELL_TOUCHES = (
    "If one place of it lies inside the full arc and goes beyond the full mark of the strip, choose Touches. "
    "In all other cases choose Can't see."
)
