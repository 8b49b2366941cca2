"""Pins the whole environment anew after a version in pyproject.toml was changed; needs uv on the path.

Writes the closure into pyproject.toml (what pip and uv install) and its hashes into .ci/requirements.txt.
"""

import re
import subprocess
import tempfile
import tomllib
from pathlib import Path

ROOT = Path(__file__).parents[1]
PYPROJECT = ROOT / "pyproject.toml"
HASHES = ROOT / ".ci" / "requirements.txt"
CLOSURE = re.compile(r"^constraint-dependencies = \[\n.*?^\]$", re.MULTILINE | re.DOTALL)
PIN = re.compile(r"^(?P<name>[a-z0-9-]+)==(?P<version>\S+)", re.MULTILINE)
COMPILE = (
    "uv pip compile pyproject.toml build.in --extra dev --universal --generate-hashes "
    "--no-header --no-annotate --no-emit-index-url --quiet --output-file requirements.txt"
)


def resolve(pyproject: str) -> str:
    """Let uv choose the versions that pyproject.toml leaves open, and list all of them with hashes."""
    with tempfile.TemporaryDirectory() as folder:
        unpinned = CLOSURE.sub("constraint-dependencies = []", pyproject)
        Path(folder, "pyproject.toml").write_text(unpinned, encoding="utf-8")
        Path(folder, "build.in").write_text(build_requirements(pyproject), encoding="utf-8")
        subprocess.run(COMPILE.split(), cwd=folder, check=True)
        return Path(folder, "requirements.txt").read_text(encoding="utf-8")


def build_requirements(pyproject: str) -> str:
    """What pip needs to install the project itself."""
    return "\n".join(tomllib.loads(pyproject)["build-system"]["requires"])


def with_closure(pyproject: str, hashes: str) -> str:
    """The text of pyproject.toml with every version of the hash list in it, but for what only builds."""
    building = build_requirements(pyproject).splitlines()
    pins = [f"{name}=={version}" for name, version in PIN.findall(hashes)]
    lines = "".join(f'  "{pin}",\n' for pin in pins if pin not in building)
    return CLOSURE.sub(lambda _: f"constraint-dependencies = [\n{lines}]", pyproject)


if __name__ == "__main__":
    text = PYPROJECT.read_text(encoding="utf-8")
    hash_list = resolve(text)
    HASHES.write_text(hash_list, encoding="utf-8")
    PYPROJECT.write_text(with_closure(text, hash_list), encoding="utf-8")
