"""The verdict on a whole kit, and the one sentence that goes with it."""

from __future__ import annotations

from collections.abc import Sequence

from app.report.report import Ask, Finding

VERDICTS = {
    "fit": "Fits",
    "care": "Fits with care",
    "open": "Not settled yet",
    "close": "Not settled yet",
    "no": "Doesn't fit",
}
EARL = {"fit": "passed", "care": "passed", "open": "cantTell", "close": "cantTell", "no": "failed"}

ALL_PASSED = "All {count} checks that concern this bike passed."
CARE_ONE = "Nothing stops it. One thing needs care."
CARE_MANY = "Nothing stops it. {count} things need care."
OPEN_ONE = "One check is still open. Next: {label}."
OPEN_MANY = "{count} checks are still open. Next: {label}."
GAPS = "A value of the kit is missing. Only its maker can settle this."
ALSO_ONE = "1 more thing to know isn't settled; it can't stop the fit."
ALSO_MANY = "{count} more things to know aren't settled; they can't stop the fit."
NO_KITS = "This catalogue has no kit yet."


def state_of_kit(findings: Sequence[Finding]) -> str:
    """fit, care, open, close or no: the first that holds of the decision list."""
    blocking = [finding for finding in findings if finding.weight == "B"]
    if any(finding.outcome == "failed" for finding in blocking):
        return "no"
    unsettled = [finding for finding in blocking if finding.outcome == "cantTell"]
    if unsettled:
        return "close" if all(finding.state == "close" for finding in unsettled) else "open"
    return "care" if any(finding.outcome == "failed" for finding in findings) else "fit"


def deciding(findings: Sequence[Finding]) -> Finding | None:
    """The finding that the verdict rests on: the first of the worst."""
    order = ("no", "open", "close", "gap", "care")
    ranked = [
        each for each in findings if each.state in order and (each.weight == "B" or each.state == "care")
    ]
    return min(ranked, key=lambda finding: (finding.weight == "C", order.index(finding.state)), default=None)


def sentence_of_kit(state: str, findings: Sequence[Finding], asks: Sequence[Ask]) -> str:
    """One sentence under the verdict."""
    if state == "no":
        worst = deciding(findings)
        return worst.sentence if worst is not None else ""
    if state in ("open", "close"):
        count = sum(finding.weight == "B" and finding.outcome == "cantTell" for finding in findings)
        if not asks:
            return GAPS
        return (OPEN_ONE if count == 1 else OPEN_MANY).format(count=count, label=asks[0].label)
    cares = sum(finding.state == "care" for finding in findings)
    if cares:
        return CARE_ONE if cares == 1 else CARE_MANY.format(count=cares)
    return ALL_PASSED.format(count=sum(finding.state == "fit" for finding in findings))


def also_open(findings: Sequence[Finding]) -> str:
    """What is still unsettled among the things to know."""
    count = sum(finding.weight == "C" and finding.outcome == "cantTell" for finding in findings)
    if not count:
        return ""
    return ALSO_ONE if count == 1 else ALSO_MANY.format(count=count)
