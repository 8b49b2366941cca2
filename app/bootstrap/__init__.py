"""Gets a command running with nothing installed but Python: standard library only, all the way through."""

import os
import subprocess
import sys
from collections.abc import Sequence
from pathlib import Path

from app.bootstrap.environment import Environment, NotMadeError
from app.bootstrap.pins import differences, read_pins

ROOT = Path(__file__).parents[2]
HANDED_OVER = "AXLEWRIGHT_HANDED_OVER"


def main(arguments: Sequence[str]) -> int:
    """Run a command where the pinned versions are installed, and answer with its exit code."""
    pins = read_pins((ROOT / "pyproject.toml").read_text(encoding="utf-8"))
    wrong = differences(pins.needed_to_test if arguments[:1] == ["test"] else pins.needed_to_run)
    if not wrong:
        os.environ.pop(HANDED_OVER, None)
        return run_here(arguments)

    if os.environ.get(HANDED_OVER):
        return refuse(f"The packages in .venv are not the pinned ones ({wrong[0]}). Delete .venv, try again.")
    return run_in(Environment(ROOT / ".venv", ROOT / "pyproject.toml"), arguments)


def run_here(arguments: Sequence[str]) -> int:
    """Run a command in this Python, which has all that it needs."""
    if arguments[:1] == ["test"]:
        os.chdir(ROOT)
        # Two processes take four minutes for the whole suite, one takes nine; a part is quicker alone.
        return become([sys.executable, "-m", "pytest", *(arguments[1:] or ["-n", "2"])])

    from app.cli import main as command

    return command(list(arguments))


def run_in(environment: Environment, arguments: Sequence[str]) -> int:
    """Make the environment if it has to be made, and run the same command inside it."""
    try:
        environment.prepare(announce=lambda sentence: print(sentence, file=sys.stderr, flush=True))
    except NotMadeError as problem:
        return refuse(str(problem))
    except KeyboardInterrupt:
        return refuse("Stopped while the environment was being made. The next command makes it anew.")

    os.environ[HANDED_OVER] = "1"
    return become([str(environment.python), "-m", "app", *arguments])


def become(command: list[str]) -> int:
    """Let a command take this process's place where it can, so that signals and the exit code are its own."""
    sys.stdout.flush()
    if sys.platform == "win32":
        return subprocess.run(command, check=False).returncode
    return os.execv(command[0], command)


def refuse(sentence: str) -> int:
    """Say why the command cannot run, and answer with the exit code of a failure."""
    print(sentence, file=sys.stderr)
    return 1
