"""How a command says in one line why it can't go on."""

from __future__ import annotations

import sys

from pydantic import ValidationError

from app.catalogue.fault import TextFaults

# One setting that is wrong keeps another from being drawn from it; that tells nothing new.
FOLLOWS = "default_factory_not_called"
LINT = "python3 -m app catalogue lint"


def complain(what: str, problem: Exception | str) -> None:
    """Say what wasn't done and why, in one line."""
    print(f"{what}: {' '.join(_why(problem).split())}", file=sys.stderr)


def _why(problem: Exception | str) -> str:
    match problem:
        case TextFaults(faults=(first, *others)) if others:
            return f"{first} That is one of {len(others) + 1} faults; {LINT} shows all."
        case ValidationError():
            return "; ".join(
                f"{'.'.join(map(str, each['loc']))}: {each['msg']}"
                for each in problem.errors()
                if each["type"] != FOLLOWS
            )
        case OSError(strerror=str(reason), filename=str(name)):
            return f"{name}: {reason}"
        case _:
            return str(problem)
