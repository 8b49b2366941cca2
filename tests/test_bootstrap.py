"""The first command on a bare machine makes the environment that it needs, and later ones find it."""

import sys
from collections.abc import Sequence
from pathlib import Path

import pytest

from app.bootstrap import environment as environments
from app.bootstrap.environment import NEEDS_VENV, UNFINISHED, Environment, NotMadeError
from app.bootstrap.pins import Pin, differences, read_list, read_pin, read_pins

PYPROJECT = """
[project]
dependencies = ["numpy==2.4.6", "uvloop==0.23.0; sys_platform != 'win32'"]
[project.optional-dependencies]
dev = ["ruff==0.17.6"]
[tool.uv]
constraint-dependencies = ["numpy==2.4.6", "ruff==0.17.6", "uvloop==0.23.0", "click==8.5.1"]
"""


class Machine:
    """Stands for venv, ensurepip and pip, which take a minute and a network; notes what was run."""

    def __init__(self, fails_at: str = "nothing") -> None:
        self.fails_at = fails_at
        self.steps: list[str] = []

    def __call__(self, command: Sequence[str]) -> int:
        step = command[2] if command[1] == "-m" else "look for pip"
        self.steps.append(step)
        if step == "venv":
            python = Environment(Path(command[-1]), Path()).python
            python.parent.mkdir(parents=True, exist_ok=True)
            python.touch()
        return int(step == self.fails_at)


def environment_on(machine: Machine, project: Path) -> Environment:
    (project / "pyproject.toml").write_text(PYPROJECT, encoding="utf-8")
    return Environment(project / ".venv", project / "pyproject.toml", run=machine)


def prepare(environment: Environment) -> list[str]:
    said: list[str] = []
    environment.prepare(announce=said.append)
    return said


def test_the_application_needs_less_than_its_tests() -> None:
    pins = read_pins(PYPROJECT)

    assert [pin.name for pin in pins.needed_to_run] == ["numpy", "uvloop"]
    assert [pin.name for pin in pins.needed_to_test] == ["numpy", "uvloop", "ruff"]
    assert pins.environment[-1] == Pin("click", "8.5.1", for_some_machines=False)


@pytest.mark.parametrize("requirement", ["numpy", "numpy>=2.4", "numpy==2.*", "numpy==2.4.6,<3"])
def test_a_dependency_without_one_exact_version_is_refused(requirement: str) -> None:
    with pytest.raises(ValueError, match="does not name one exact version"):
        read_pin(requirement)


def test_a_package_is_the_same_however_its_name_is_spelled() -> None:
    assert read_pin("Typing_Extensions==4.16.0") == read_pin("typing-extensions==4.16.0")


def test_another_version_and_a_missing_package_are_differences() -> None:
    installed = {"numpy": "2.4.5", "uvloop": "0.23.0"}

    found = differences(read_list(["numpy==2.4.6", "ruff==0.17.6", "uvloop==0.23.0"]), installed.get)

    assert found == ["numpy 2.4.5 instead of 2.4.6", "ruff missing instead of 0.17.6"]


def test_a_package_for_other_machines_may_be_missing_but_not_another_version() -> None:
    pins = read_list(["uvloop==0.23.0; sys_platform != 'win32'"])

    assert differences(pins, dict[str, str]().get) == []
    assert differences(pins, {"uvloop": "0.22.0"}.get) == ["uvloop 0.22.0 instead of 0.23.0"]


def test_the_first_command_makes_the_environment_and_says_so_in_one_line(tmp_path: Path) -> None:
    machine = Machine()

    said = prepare(environment_on(machine, tmp_path))

    assert machine.steps == ["venv", "ensurepip", "pip"]
    assert said == ["Making the environment in .venv, once: about a minute ..."]
    assert (tmp_path / ".venv/constraints.txt").read_text(encoding="ascii").splitlines()[0] == "numpy==2.4.6"


def test_the_second_command_finds_it_ready_and_says_nothing(tmp_path: Path) -> None:
    environment = environment_on(machine := Machine(), tmp_path)
    prepare(environment)
    machine.steps.clear()

    said = prepare(environment)

    assert environment.is_ready()
    assert (machine.steps, said) == ([], [])


def test_a_changed_pyproject_brings_the_environment_up_to_date(tmp_path: Path) -> None:
    environment = environment_on(machine := Machine(), tmp_path)
    prepare(environment)
    machine.steps.clear()

    environment.pyproject.write_text(PYPROJECT.replace("2.4.6", "2.4.7"), encoding="utf-8")
    said = prepare(environment)

    assert machine.steps == ["look for pip", "pip"]
    assert said == ["Bringing the environment in .venv up to date with pyproject.toml ..."]


def test_an_environment_made_by_hand_is_kept(tmp_path: Path) -> None:
    environment = environment_on(machine := Machine(), tmp_path)
    machine(["python", "-m", "venv", str(environment.folder)])
    machine.steps.clear()

    prepare(environment)

    assert machine.steps == ["look for pip", "pip"]


def test_an_environment_without_pip_is_made_anew(tmp_path: Path) -> None:
    environment = environment_on(machine := Machine(fails_at="look for pip"), tmp_path)
    machine(["python", "-m", "venv", str(environment.folder)])
    machine.steps.clear()

    prepare(environment)

    assert machine.steps == ["look for pip", "venv", "ensurepip", "pip"]


@pytest.mark.parametrize("step", ["ensurepip", "pip"])
def test_a_half_made_environment_is_made_anew(tmp_path: Path, step: str) -> None:
    environment = environment_on(machine := Machine(fails_at=step), tmp_path)
    with pytest.raises(NotMadeError, match="the lines above say why"):
        prepare(environment)
    assert environment.marked() == UNFINISHED
    machine.fails_at = "nothing"
    machine.steps.clear()

    prepare(environment)

    assert machine.steps == ["venv", "ensurepip", "pip"]
    assert environment.is_ready()


def test_a_python_without_venv_is_told_which_package_to_install(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(environments, "find_spec", lambda name: None if name == "ensurepip" else sys)

    with pytest.raises(NotMadeError) as refusal:
        prepare(environment_on(Machine(), tmp_path))

    assert str(refusal.value) == NEEDS_VENV
    assert "sudo apt install python3-venv" in NEEDS_VENV
