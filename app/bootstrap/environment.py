"""Makes the folder .venv with the pinned packages, and knows whether it is ready, outdated or half made."""

import hashlib
import subprocess
import sys
from collections.abc import Callable, Iterator, Sequence
from contextlib import contextmanager
from importlib.util import find_spec
from pathlib import Path

from app.bootstrap.pins import read_pins

UNFINISHED = "unfinished"
HAS_PIP = "import importlib.util, sys; sys.exit(importlib.util.find_spec('pip') is None)"
NEEDS_VENV = (
    "This Python cannot make an environment. On Debian and Ubuntu: "
    "`sudo apt install python3-venv`, then run the same command again."
)

Runner = Callable[[Sequence[str]], int]


class NotMadeError(Exception):
    """The environment could not be made; the message says what to do."""


def run_quietly(command: Sequence[str]) -> int:
    """Run a command and answer with its exit code; what it says is shown only when it fails."""
    done = subprocess.run(command, capture_output=True, text=True, check=False)
    if done.returncode != 0:
        sys.stderr.write(done.stdout + done.stderr)
    return done.returncode


class Environment:
    """A folder with its own Python and packages, marked with the hash of the file that it was made from."""

    def __init__(self, folder: Path, pyproject: Path, run: Runner = run_quietly) -> None:
        self.folder = folder
        self.pyproject = pyproject
        self.run = run
        self.mark = folder / "axlewright-made-from"

    @property
    def python(self) -> Path:
        """The Python inside the folder."""
        return self.folder / ("Scripts/python.exe" if sys.platform == "win32" else "bin/python")

    @property
    def wanted(self) -> str:
        """The mark of an environment that was made from pyproject.toml as it is now."""
        return hashlib.sha256(self.pyproject.read_bytes()).hexdigest()

    def is_ready(self) -> bool:
        """Tell whether the last making was finished and pyproject.toml has not changed since."""
        return self.python.exists() and self.marked() == self.wanted

    def marked(self) -> str | None:
        """What the mark says, or nothing where someone made the folder by hand."""
        return self.mark.read_text(encoding="ascii") if self.mark.exists() else None

    def prepare(self, announce: Callable[[str], None]) -> None:
        """Make the environment or bring it up to date, one process at a time; NotMadeError says why not."""
        with one_at_a_time(self.pyproject):
            if self.is_ready():
                return
            wanted = self.wanted
            if not self.can_be_updated():
                announce("Making the environment in .venv, once: about a minute ...")
                self.make()
            else:
                announce("Bringing the environment in .venv up to date with pyproject.toml ...")
            self.install()
            self.mark.write_text(wanted, encoding="ascii")

    def can_be_updated(self) -> bool:
        """Tell whether the folder is whole and has pip; a half-made one is not worth saving."""
        if self.marked() == UNFINISHED or not self.python.exists():
            return False
        return self.run([str(self.python), "-c", HAS_PIP]) == 0

    def make(self) -> None:
        """Make the folder anew with Python and pip; it counts as half made until the packages are in."""
        if find_spec("venv") is None or find_spec("ensurepip") is None:
            raise NotMadeError(NEEDS_VENV)
        made = self.run([sys.executable, "-m", "venv", "--clear", "--without-pip", str(self.folder)]) == 0
        if made:
            self.mark.write_text(UNFINISHED, encoding="ascii")
        if not made or self.run([str(self.python), "-m", "ensurepip", "--default-pip"]) != 0:
            raise NotMadeError("No environment could be made in .venv: the lines above say why.")

    def install(self) -> None:
        """Install the pinned packages; the folder counts as half made until that has ended well."""
        self.mark.write_text(UNFINISHED, encoding="ascii")
        pins = read_pins(self.pyproject.read_text(encoding="utf-8")).environment
        constraints = self.folder / "constraints.txt"
        constraints.write_text("".join(f"{pin.name}=={pin.version}\n" for pin in pins), encoding="ascii")
        pip = [str(self.python), "-m", "pip", "install", "--disable-pip-version-check", "--no-input"]
        if self.run([*pip, "-q", "-c", str(constraints), "-e", f"{self.pyproject.parent}[dev]"]) != 0:
            raise NotMadeError("The packages could not be installed: the lines above say why.")


@contextmanager
def one_at_a_time(file: Path) -> Iterator[None]:
    """Let no second process in while the block runs; Windows, which has no such lock, is trusted."""
    with file.open("rb") as held:
        if sys.platform != "win32":
            import fcntl

            fcntl.flock(held, fcntl.LOCK_EX)
        yield
