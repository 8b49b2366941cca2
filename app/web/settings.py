"""What a shop can set from its environment: AXLEWRIGHT_SHOP_NAME, AXLEWRIGHT_PORT and so on."""

from __future__ import annotations

from datetime import tzinfo
from pathlib import Path
from typing import Any
from urllib.parse import urlsplit
from zoneinfo import ZoneInfo, ZoneInfoNotFoundError

from pydantic import Field, field_validator
from pydantic_settings import BaseSettings, SettingsConfigDict

PROJECT = Path(__file__).parents[2]


def _database_in_data_folder(settings: dict[str, Any]) -> str:
    return f"sqlite:///{settings['data_folder'] / 'axlewright.sqlite'}"


class Settings(BaseSettings):
    """Where the application listens, what it calls itself, where it keeps things. Each default works."""

    model_config = SettingsConfigDict(env_prefix="AXLEWRIGHT_", frozen=True, extra="ignore")

    shop_name: str = Field(default="Alder Lock Cycles", min_length=1, max_length=60)
    shop_contact: str = Field(
        default="", max_length=200, description="How to reach the shop, in one sentence."
    )
    time_zone: str = Field(default="", description="Such as Europe/Dublin; the machine's own when empty.")
    public_address: str = Field(
        default="", description="As browsers see it, such as https://check.example.org."
    )
    host: str = "127.0.0.1"
    port: int = Field(default=8000, ge=0, le=65535)
    data_folder: Path = Path("var")
    database_url: str = Field(default_factory=_database_in_data_folder)
    catalogue_folder: Path = PROJECT / "seed_data" / "catalogue"
    standards_folder: Path = PROJECT / "seed_data" / "standards"

    @field_validator("time_zone")
    @classmethod
    def _known_time_zone(cls, name: str) -> str:
        if not name:
            return name
        try:
            ZoneInfo(name)
        except (ZoneInfoNotFoundError, ValueError) as fault:
            raise ValueError(f"{name!r} is not a time zone; write one such as Europe/Dublin.") from fault
        return name

    @field_validator("public_address")
    @classmethod
    def _whole_address(cls, address: str) -> str:
        parts = urlsplit(address)
        if address and (parts.scheme not in {"http", "https"} or not parts.hostname):
            raise ValueError(f"{address!r} is not an address; write one such as https://check.example.org.")
        return address.rstrip("/")

    @property
    def zone(self) -> tzinfo | None:
        """The shop's time zone, or None for the machine's own, as datetime.astimezone takes it."""
        return ZoneInfo(self.time_zone) if self.time_zone else None

    @property
    def is_encrypted(self) -> bool:
        """Whether browsers reach the shop over TLS."""
        return self.public_address.startswith("https://")
