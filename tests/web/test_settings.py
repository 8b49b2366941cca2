"""Settings: each has a default that works, and a wrong one is refused with what to write instead."""

from __future__ import annotations

from pathlib import Path

import pytest
from pydantic import ValidationError

from app.web.settings import Settings


def test_a_shop_needs_to_set_nothing() -> None:
    settings = Settings()

    assert settings.host == "127.0.0.1"
    assert settings.port == 8000
    assert settings.shop_name == "Alder Lock Cycles"
    assert settings.database_url == "sqlite:///var/axlewright.sqlite"
    assert settings.zone is None
    assert not settings.is_encrypted


def test_the_environment_sets_them(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("AXLEWRIGHT_SHOP_NAME", "Weirside Cycles")
    monkeypatch.setenv("AXLEWRIGHT_TIME_ZONE", "Europe/Dublin")

    settings = Settings()

    assert settings.shop_name == "Weirside Cycles"
    assert str(settings.zone) == "Europe/Dublin"


def test_the_database_lies_in_the_data_folder(tmp_path: Path) -> None:
    assert Settings(data_folder=tmp_path).database_url == f"sqlite:///{tmp_path}/axlewright.sqlite"


def test_a_database_of_ones_own_wins_over_the_folder(tmp_path: Path) -> None:
    settings = Settings(data_folder=tmp_path, database_url="sqlite:///elsewhere.db")

    assert settings.database_url == "sqlite:///elsewhere.db"


@pytest.mark.parametrize("name", ["Europe/Nowhere", "../etc/passwd", "/etc/localtime"])
def test_a_time_zone_that_isnt_one_is_refused(name: str) -> None:
    with pytest.raises(ValidationError, match="write one such as Europe/Dublin"):
        Settings(time_zone=name)


@pytest.mark.parametrize("address", ["check.example.org", "ftp://check.example.org", "https://"])
def test_a_public_address_that_isnt_one_is_refused(address: str) -> None:
    with pytest.raises(ValidationError, match=r"write one such as https://check\.example\.org"):
        Settings(public_address=address)


def test_a_public_address_loses_its_last_slash() -> None:
    settings = Settings(public_address="https://check.example.org/")

    assert settings.public_address == "https://check.example.org"
    assert settings.is_encrypted
